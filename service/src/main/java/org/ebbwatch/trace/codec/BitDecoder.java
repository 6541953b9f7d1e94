package org.ebbwatch.trace.codec;

/** The reading direction. Past the end it reads zeros; {@link #readExactly} tells whether that happened. */
final class BitDecoder extends BitCoder {

    private final byte[] bytes;
    private final int end;
    private int next;
    private long window;

    BitDecoder(byte[] bytes, int from, int end) {
        this.bytes = bytes;
        this.next = from;
        this.end = end;
        for (int i = 0; i < 4; i++) {
            shiftWindow();
        }
    }

    @Override
    int narrow(long cut, int bit) {
        int read;
        if (window <= cut) {
            high = cut;
            read = 1;
        } else {
            low = cut + 1;
            read = 0;
        }
        while (topByteSettled()) {
            shiftInterval();
            shiftWindow();
        }
        return read;
    }

    boolean readExactly() {
        return next == end;
    }

    private void shiftWindow() {
        int read = next < end ? bytes[next] & 0xFF : 0;
        next++;
        window = ((window << 8) & WORD) | read;
    }
}
