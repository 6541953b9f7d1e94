package org.ebbwatch.speed;

import org.ebbwatch.trace.codec.Samples;

/**
 * What the scheme of Pelkonen et al. (Gorilla, VLDB 2015) makes of a segment, written after the paper (from memory): times as
 * differences of differences in 1, 9, 12, 16 or 36 bits, readings as 64-bit floats, each exclusive-or the one before in the window
 * of its meaningful bits. A second window of the paper's: 5 bits of leading zeros, 6 of length. Counts the bits alone.
 */
final class XorFloats {
    private XorFloats() {}

    /** Bytes of times, volts and degrees; the readings are the decimal numbers that a person would see. */
    static double bytes(Samples samples, double voltsPerCount, double kelvinPerCount) {
        long bits = times(samples.eventMillis(), samples.count());
        bits += readings(samples.volts(), samples.count(), voltsPerCount);
        bits += readings(samples.celsius(), samples.count(), kelvinPerCount);
        return bits / 8.0;
    }

    private static long times(long[] millis, int count) {
        long bits = 64;
        long step = 0;
        for (int i = 1; i < count; i++) {
            long now = millis[i] - millis[i - 1];
            long change = Math.abs(now - step);
            bits += change == 0 ? 1 : change < 64 ? 9 : change < 256 ? 12 : change < 2_048 ? 16 : 36;
            step = now;
        }
        return bits;
    }

    private static long readings(int[] counts, int count, double perCount) {
        long bits = 64;
        long before = Double.doubleToRawLongBits(decimal(counts[0], perCount));
        int leading = 64;
        int trailing = 0;
        for (int i = 1; i < count; i++) {
            long now = Double.doubleToRawLongBits(decimal(counts[i], perCount));
            long changed = now ^ before;
            before = now;
            if (changed == 0) {
                bits += 1;
                continue;
            }
            int itsLeading = Math.min(31, Long.numberOfLeadingZeros(changed));
            int itsTrailing = Long.numberOfTrailingZeros(changed);
            if (leading < 64 && itsLeading >= leading && itsTrailing >= trailing) {
                bits += 2 + 64 - leading - trailing;
            } else {
                leading = itsLeading;
                trailing = itsTrailing;
                bits += 2 + 5 + 6 + 64 - leading - trailing;
            }
        }
        return bits;
    }

    /** The double nearest to the decimal number, as a parser would give it. */
    private static double decimal(int count, double perCount) {
        return count / Math.rint(1 / perCount);
    }
}
