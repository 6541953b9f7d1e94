package org.ebbwatch.rig.wire;

/** CRC-32C bit by bit, as the protocol document spells it out; slow, and apart from the one under test. */
final class BitwiseCrc32c {
    private BitwiseCrc32c() {}

    static int of(byte[] bytes) {
        int crc = 0xFFFF_FFFF;
        for (byte b : bytes) {
            crc ^= b & 0xFF;
            for (int i = 0; i < 8; i++) {
                crc = (crc & 1) == 1 ? crc >>> 1 ^ 0x82F63B78 : crc >>> 1;
            }
        }
        return ~crc;
    }
}
