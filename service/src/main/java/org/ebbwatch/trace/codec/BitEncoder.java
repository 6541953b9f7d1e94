package org.ebbwatch.trace.codec;

import java.util.Arrays;

/** The writing direction: settled bytes are appended to a growing array. */
final class BitEncoder extends BitCoder {

    private byte[] bytes = new byte[4096];
    private int length;

    @Override
    int narrow(long cut, int bit) {
        if (bit == 1) {
            high = cut;
        } else {
            low = cut + 1;
        }
        while (topByteSettled()) {
            put(low);
            shiftInterval();
        }
        return bit;
    }

    /** Settles the last interval with the four bytes the decoder looks ahead, and gives out all bytes. */
    byte[] finish() {
        for (int i = 0; i < 4; i++) {
            put(low);
            shiftInterval();
        }
        return Arrays.copyOf(bytes, length);
    }

    private void put(long interval) {
        if (length == bytes.length) {
            bytes = Arrays.copyOf(bytes, 2 * length);
        }
        bytes[length++] = (byte) (interval >>> 24);
    }
}
