package org.ebbwatch.rig.message;

/** Checks the range of a record's component; the message of the error names the component and what is allowed. */
final class Bounds {
    static final long U32_HIGHEST = 0xFFFF_FFFFL;
    static final int U16_HIGHEST = 0xFFFF;
    static final int CHANNEL_HIGHEST = 0xFE;
    static final int CHANNELS_MOST = 64;

    private Bounds() {}

    static void within(String name, long number, long lowest, long highest) {
        if (number < lowest || number > highest) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is " + lowest + " to " + highest);
        }
    }

    static void u32(String name, long number) {
        within(name, number, 0, U32_HIGHEST);
    }

    static void u16(String name, long number) {
        within(name, number, 0, U16_HIGHEST);
    }

    static void u8(String name, long number) {
        within(name, number, 0, 0xFF);
    }

    static void channel(int channel) {
        within("channel", channel, 0, CHANNEL_HIGHEST);
    }

    static void printableAscii(String name, String text, int shortest, int longest) {
        within("length of " + name, text.length(), shortest, longest);
        for (int i = 0; i < text.length(); i++) {
            within("character " + i + " of " + name, text.charAt(i), 0x20, 0x7E);
        }
    }
}
