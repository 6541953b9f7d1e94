package org.ebbwatch.profile.text;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

/**
 * Cuts a stream of bytes into lines, ended by a line feed or a carriage return. Its memory is bounded; no bytes make it throw.
 * It hands on only lines that it saw from their first byte to their end: what came before the first end of a connection, lines
 * longer than {@value #LONGEST} bytes, lines with control characters, and lines within which the device paused for a second are
 * dropped. Pure.
 */
final class LineCutter {
    /** The longest line, bytes. */
    static final int LONGEST = 1_024;

    private static final long LONGEST_PAUSE_NANOS = 1_000_000_000;

    /** Takes what is cut. */
    interface Lines {
        /** A whole line, not empty, without its end. */
        void line(String line);

        /** A line that cannot be used. */
        void dropped(String why);
    }

    private enum Place {
        /** Before the first line end of the connection. */
        BEFORE_FIRST_END,
        IN_LINE,
        IN_LONG_LINE,
        IN_GARBLED_LINE
    }

    private final Lines lines;
    private final byte[] held = new byte[LONGEST];
    private int length;
    private Place place = Place.BEFORE_FIRST_END;
    private long lastNanos;

    LineCutter(Lines lines) {
        this.lines = lines;
    }

    /**
     * Takes the next bytes.
     *
     * @param nanos when they came, on the host's monotonic clock
     */
    void accept(byte[] bytes, int count, long nanos) {
        if (place == Place.IN_LINE && length > 0 && nanos - lastNanos >= LONGEST_PAUSE_NANOS) {
            place = Place.IN_GARBLED_LINE;
        }
        lastNanos = nanos;
        for (int i = 0; i < count; i++) {
            if (bytes[i] == '\n' || bytes[i] == '\r') {
                end();
            } else {
                keep(bytes[i]);
            }
        }
    }

    private void keep(byte each) {
        if (place != Place.IN_LINE) {
            return;
        }
        if (isControl(each)) {
            place = Place.IN_GARBLED_LINE;
        } else if (length == LONGEST) {
            place = Place.IN_LONG_LINE;
        } else {
            held[length++] = each;
        }
    }

    private static boolean isControl(byte each) {
        return (each >= 0 && each < ' ' && each != '\t') || each == 0x7F;
    }

    private void end() {
        Place ended = place;
        String line = new String(held, 0, length, ISO_8859_1);
        place = Place.IN_LINE;
        length = 0;
        switch (ended) {
            case BEFORE_FIRST_END -> {}
            case IN_LONG_LINE -> lines.dropped("A line is longer than " + LONGEST + " characters.");
            case IN_GARBLED_LINE -> lines.dropped("A line was cut or holds characters that are no text.");
            case IN_LINE -> {
                if (!line.isBlank()) {
                    lines.line(line);
                }
            }
        }
    }
}
