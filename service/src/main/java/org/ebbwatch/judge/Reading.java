package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;

/**
 * One scan as far as it may be believed.
 *
 * @param scan as it came
 * @param stepMillis watched since the scan before; 0 for the first, and after a gap
 * @param volts NaN where it may not be believed
 * @param differenceVolts expanded uncertainty of the difference of two readings of this channel
 * @param switched whether the load went on or off with this scan
 * @param announced whether a person is at work on the channel
 */
record Reading(Scan scan, long stepMillis, double volts, double differenceVolts, boolean switched, boolean announced) {

    long atMillis() {
        return scan.eventMillis();
    }

    double expandedVolts() {
        return scan.expandedVolts();
    }

    boolean isKnown() {
        return !Double.isNaN(volts);
    }

    /** Whether V + U is below {@code limitVolts}; false where the voltage is not known. */
    boolean isBelow(double limitVolts) {
        return volts + scan.expandedVolts() < limitVolts;
    }

    /** Whether V + U and two deviations of the channel's noise are below {@code limitVolts}: not one noisy reading. */
    boolean isSurelyBelow(double limitVolts) {
        return volts + scan.expandedVolts() + differenceVolts / StrictMath.sqrt(2) < limitVolts;
    }

    /** Whether V - U is above {@code limitVolts}; false where the voltage is not known. */
    boolean isSurelyAbove(double limitVolts) {
        return volts - scan.expandedVolts() > limitVolts;
    }
}
