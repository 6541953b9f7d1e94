package org.ebbwatch.trace.codec;

/**
 * Codes unsigned numbers, most of them small: first how many bits the number has, as a row of "one more" decisions, then
 * the bits below its leading one. That is the code of Elias (1975), and like the codes of Golomb (1966) and Rice (1979) it
 * needs no bound; but the row and the first {@value #LEARNED} bits below the leading one have learned odds, so it fits
 * itself to whatever spread the numbers have. The bits further down are as good as noise and cost one bit each.
 * References from memory.
 */
final class NumberModel {

    private static final int LEARNED = 3;
    private static final int LENGTHS = Long.SIZE + 1;

    private final int[] lengthOdds;
    private final int[] bitOdds = new int[LENGTHS << LEARNED];

    /** @param contexts how many situations keep their own odds for the length of a number */
    NumberModel(int contexts) {
        lengthOdds = new int[contexts * LENGTHS];
    }

    void forget() {
        BitCoder.forget(lengthOdds);
        BitCoder.forget(bitOdds);
    }

    long code(BitCoder coder, int context, long number) {
        int row = context * LENGTHS;
        int wanted = Long.SIZE - Long.numberOfLeadingZeros(number);
        int length = 0;
        while (length < Long.SIZE && coder.bit(lengthOdds, row + length, length < wanted ? 1 : 0) == 1) {
            length++;
        }
        if (length < 2) {
            return length;
        }
        int below = length - 1;
        int learned = Math.min(below, LEARNED);
        int leading = 1;
        for (int i = 1; i <= learned; i++) {
            int bit = (int) (number >>> (below - i)) & 1;
            leading = (leading << 1) | coder.bit(bitOdds, (length << LEARNED) + leading, bit);
        }
        int even = below - learned;
        return ((long) leading << even) | coder.evenBits(number, even);
    }
}
