package org.ebbwatch.trace;

import org.ebbwatch.trace.codec.DamagedSegmentException;

/** Is shown what one channel read, in order of event time. */
public interface SampleVisitor {

    /** Called before the first sample and again wherever one of these changes. */
    default void stretch(Stretch stretch) {}

    /**
     * Takes one sample.
     *
     * @param scan the board's scan number
     * @param eventMillis event time
     * @param state the board's state byte, 0 to 255
     * @param volts counts or float bits
     * @param celsius counts or float bits
     * @param amperes counts or float bits; 0 where the stretch has none
     */
    void sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes);

    /**
     * Called in place of the samples of a segment that cannot be read; throws unless overridden, so that damage is never
     * taken for silence.
     */
    default void damaged(long firstEventMillis, DamagedSegmentException damage) {
        throw damage;
    }
}
