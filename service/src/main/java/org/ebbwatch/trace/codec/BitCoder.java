package org.ebbwatch.trace.codec;

import java.util.Arrays;

/**
 * One direction of adaptive binary arithmetic coding. A model is written once, against this class: while encoding, the
 * bits handed in are written and handed back; while decoding, the bits handed in are ignored and those read are handed
 * back. So the two directions cannot drift apart.
 *
 * <p>The interval [low, high] of unsigned 32-bit numbers is cut in proportion to the odds of the next bit and the part
 * that belongs to the bit is kept (Witten, Neal and Cleary 1987); leading bytes on which both ends agree are settled and
 * shifted out (Martin 1979). Both parts always hold at least one number, so any bit can be coded at any time. The odds of
 * a bit are learned from the bits seen in the same place before, by the estimator (ones + 1/2) / (seen + 1) of Krichevsky
 * and Trofimov (1981), which starts to forget once it has seen {@value #MEMORY} of them. References from memory.
 *
 * <p>All arithmetic is on integers: the same bytes on every machine. Not thread-safe.
 */
abstract class BitCoder {

    /** From here on an estimate moves by 1/257 of its error per bit: slow for a steady series, fast enough for a night. */
    static final int MEMORY = 255;

    static final long WORD = 0xFFFF_FFFFL;
    private static final long TOP_BYTE = 0xFF00_0000L;

    /** Odds are one int: the share of ones in the upper 22 bits, how many bits were seen in the lower 10. */
    private static final int SEEN_BITS = 10;

    private static final int SEEN_MASK = (1 << SEEN_BITS) - 1;
    private static final int ALWAYS = (1 << (Integer.SIZE - SEEN_BITS)) - 1;
    private static final int UNKNOWN = (ALWAYS / 2 + 1) << SEEN_BITS;
    private static final int[] STEP = new int[MEMORY + 1];

    static {
        for (int seen = 0; seen <= MEMORY; seen++) {
            STEP[seen] = (1 << 16) / (seen + 2);
        }
    }

    long low;
    long high = WORD;

    static void forget(int[] odds) {
        Arrays.fill(odds, UNKNOWN);
    }

    /** Keeps [low, cut] for a one and [cut + 1, high] for a zero, and settles what both ends agree on. */
    abstract int narrow(long cut, int bit);

    /** Codes one bit by the odds in {@code odds[at]} and lets them learn from it. */
    final int bit(int[] odds, int at, int bit) {
        int known = odds[at];
        long share = Math.max(known >>> 16, 1);
        int coded = narrow(low + (((high - low) * share) >>> 16), bit);
        int seen = known & SEEN_MASK;
        int ones = known >>> SEEN_BITS;
        int miss = (-coded & ALWAYS) - ones;
        ones += (int) (((long) miss * STEP[seen]) >> 16);
        odds[at] = (ones << SEEN_BITS) | Math.min(seen + 1, MEMORY);
        return coded;
    }

    /** Codes the lower {@code count} bits of a number, each at even odds, highest first. */
    final long evenBits(long number, int count) {
        long coded = 0;
        for (int place = count - 1; place >= 0; place--) {
            coded = (coded << 1) | narrow(low + ((high - low) >>> 1), (int) (number >>> place) & 1);
        }
        return coded;
    }

    final boolean topByteSettled() {
        return ((low ^ high) & TOP_BYTE) == 0;
    }

    final void shiftInterval() {
        low = (low << 8) & WORD;
        high = ((high << 8) & WORD) | 0xFF;
    }
}
