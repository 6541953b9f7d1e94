package org.ebbwatch.trace.codec;

/**
 * What one channel read, column by column. The arrays are not copied and may be longer than {@code count}.
 *
 * @param kinds what the 32 bits of a reading are
 * @param count samples, 1 to {@value #MOST}
 * @param scans the board's scan numbers
 * @param eventMillis event time of each scan
 * @param states the board's state byte of this channel in each scan
 * @param volts counts or float bits
 * @param celsius counts or float bits
 * @param amperes counts or float bits; not looked at where the kinds say that amperes are absent
 */
public record Samples(
        ValueKinds kinds,
        int count,
        long[] scans,
        long[] eventMillis,
        byte[] states,
        int[] volts,
        int[] celsius,
        int[] amperes) {

    public static final int MOST = 4096;

    public Samples {
        if (count < 1 || count > MOST) {
            throw new IllegalArgumentException("a segment holds 1 to 4096 samples, not " + count);
        }
    }

    static Samples unfilled(ValueKinds kinds, int count) {
        int[] amperes = new int[kinds.hasAmperes() ? count : 0];
        return new Samples(
                kinds,
                count,
                new long[count],
                new long[count],
                new byte[count],
                new int[count],
                new int[count],
                amperes);
    }
}
