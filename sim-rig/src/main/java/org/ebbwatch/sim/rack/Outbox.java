package org.ebbwatch.sim.rack;

import java.util.Arrays;

/**
 * Bytes on their way to the host, in order, and the wire that may harm them. Holds what nobody fetches, up to
 * {@link #MOST}; then whole new frames are lost, as on a wire without flow control.
 */
final class Outbox {
    static final int MOST = 1 << 20;

    private final Randomness wire;
    private byte[] bytes = new byte[4096];
    private int begin;
    private int end;
    private double corruptShare;
    private double dropShare;
    private boolean delimiterLost;

    Outbox(Randomness wire) {
        this.wire = wire;
    }

    void setCorruptShare(double share) {
        corruptShare = share;
    }

    void setDropShare(double share) {
        dropShare = share;
    }

    /** Takes a frame with its delimiter; says whether it will arrive whole. */
    boolean add(byte[] frame, int length) {
        if (end - begin + length > MOST) {
            return false;
        }
        makeRoom(length);
        if (corruptShare == 0 && dropShare == 0) {
            System.arraycopy(frame, 0, bytes, end, length);
            end += length;
            boolean whole = !delimiterLost;
            delimiterLost = false;
            return whole;
        }
        return addHarmed(frame, length);
    }

    private boolean addHarmed(byte[] frame, int length) {
        boolean whole = !delimiterLost;
        delimiterLost = false;
        for (int i = 0; i < length; i++) {
            boolean dropped = wire.nextDouble() < dropShare;
            boolean corrupted = wire.nextDouble() < corruptShare;
            if (dropped || corrupted) {
                whole = false;
                delimiterLost = i == length - 1;
            }
            if (!dropped) {
                int flipped = corrupted ? 1 + (int) (wire.nextDouble() * 255) : 0;
                bytes[end++] = (byte) (frame[i] ^ flipped);
            }
        }
        return whole;
    }

    private void makeRoom(int length) {
        if (begin == end) {
            begin = 0;
            end = 0;
        }
        if (end + length > bytes.length) {
            int held = end - begin;
            byte[] target = held + length > bytes.length ? new byte[2 * (held + length)] : bytes;
            System.arraycopy(bytes, begin, target, 0, held);
            bytes = target;
            begin = 0;
            end = held;
        }
    }

    /** Moves bytes out; gives how many. */
    int take(byte[] into) {
        int taken = Math.min(into.length, end - begin);
        System.arraycopy(bytes, begin, into, 0, taken);
        begin += taken;
        return taken;
    }

    /** All bytes, leaving none. */
    byte[] takeAll() {
        byte[] all = Arrays.copyOfRange(bytes, begin, end);
        begin = end;
        return all;
    }
}
