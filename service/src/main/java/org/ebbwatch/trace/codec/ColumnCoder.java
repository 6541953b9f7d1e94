package org.ebbwatch.trace.codec;

/**
 * Codes the columns of a segment one after another through one {@link BitCoder}. Every column is walked in place: encoding
 * leaves it as it is, decoding fills it. Each column starts with fresh models.
 *
 * <p>A reading is coded as its rank by distance from the forecast: 0 for the count nearest to it, 1 for the second nearest,
 * on the side the fraction of the forecast points to, and so on. The size of the last few misses chooses the odds, so that a
 * load switched on costs its neighbours nothing for long. All differences wrap, so every 32-bit and 64-bit value has a code.
 */
final class ColumnCoder {

    private static final int CONTEXTS = 16;
    private static final long HALF = 1L << (Forecast.FRACTION_BITS - 1);
    private static final long FRACTION_MASK = (1L << Forecast.FRACTION_BITS) - 1;

    private final BitCoder coder;
    private final NumberModel numbers = new NumberModel(CONTEXTS);
    private final int[] sameOdds = new int[1];
    private final int[] stateOdds = new int[256];

    ColumnCoder(BitCoder coder) {
        this.coder = coder;
    }

    /** Scan numbers or event times: the first is known, the step to each next one is mostly the usual step. */
    void steps(long[] column, int count) {
        numbers.forget();
        long first = 0;
        long second = 0;
        long third = 0;
        for (int i = 1; i < count; i++) {
            long expected = column[i - 1] + median(first, second, third);
            long off = column[i] - expected;
            long coded = numbers.code(coder, 0, (off << 1) ^ (off >> 63));
            column[i] = expected + ((coded >>> 1) ^ -(coded & 1));
            third = i == 1 ? column[1] - column[0] : second;
            second = i == 1 ? third : first;
            first = column[i] - column[i - 1];
        }
    }

    private static long median(long a, long b, long c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    /** State bytes: one cheap bit while nothing changes, eight learned bits when something does. */
    void states(byte[] column, int count) {
        BitCoder.forget(sameOdds);
        BitCoder.forget(stateOdds);
        int last = 0;
        for (int i = 0; i < count; i++) {
            int state = column[i] & 0xFF;
            if (coder.bit(sameOdds, 0, state == last ? 1 : 0) == 0) {
                int node = 1;
                for (int place = 7; place >= 0; place--) {
                    node = (node << 1) | coder.bit(stateOdds, node, (state >>> place) & 1);
                }
                last = node & 0xFF;
            }
            column[i] = (byte) last;
        }
    }

    /** Counts of the board, or the bit patterns of its 32-bit floats, mapped so that greater floats are greater numbers. */
    void readings(int[] column, int count, boolean floats) {
        numbers.forget();
        Forecast forecast = new Forecast();
        long recentMiss = 0;
        for (int i = 0; i < count; i++) {
            long expected = forecast.next();
            int nearest = (int) ((expected + HALF) >> Forecast.FRACTION_BITS);
            boolean upwards = (expected & FRACTION_MASK) < HALF;
            int reading = floats ? ordered(column[i]) : column[i];
            int off = upwards ? nearest - reading : reading - nearest;
            int rank = (int) numbers.code(coder, context(recentMiss), ((off << 1) ^ (off >> 31)) & BitCoder.WORD);
            off = (rank >>> 1) ^ -(rank & 1);
            reading = upwards ? nearest - off : nearest + off;
            column[i] = floats ? ordered(reading) : reading;
            long miss = Math.abs(((long) reading << Forecast.FRACTION_BITS) - expected);
            recentMiss += ((miss >> (Forecast.FRACTION_BITS - 8)) - recentMiss) >> 3;
            forecast.learn(reading);
        }
    }

    /** A context for every factor of eight in the size of the misses. */
    private static int context(long recentMiss) {
        return Math.min((Long.SIZE - Long.numberOfLeadingZeros(recentMiss >> 7)) / 3, CONTEXTS - 1);
    }

    /** Its own inverse. Among floats of one sign the bit patterns are ordered; the negative ones run backwards. */
    private static int ordered(int floatBits) {
        return floatBits ^ ((floatBits >> 31) & Integer.MAX_VALUE);
    }
}
