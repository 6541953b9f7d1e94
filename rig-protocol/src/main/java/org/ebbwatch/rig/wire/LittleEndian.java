package org.ebbwatch.rig.wire;

/** Integers of a byte array, least significant byte first. */
final class LittleEndian {
    private LittleEndian() {}

    static int u8(byte[] bytes, int at) {
        return bytes[at] & 0xFF;
    }

    static int u16(byte[] bytes, int at) {
        return u8(bytes, at) | u8(bytes, at + 1) << 8;
    }

    static int i32(byte[] bytes, int at) {
        return u16(bytes, at) | u16(bytes, at + 2) << 16;
    }

    static long u32(byte[] bytes, int at) {
        return i32(bytes, at) & 0xFFFF_FFFFL;
    }

    static void put16(byte[] bytes, int at, int number) {
        bytes[at] = (byte) number;
        bytes[at + 1] = (byte) (number >> 8);
    }

    static void put32(byte[] bytes, int at, int number) {
        put16(bytes, at, number);
        put16(bytes, at + 2, number >> 16);
    }
}
