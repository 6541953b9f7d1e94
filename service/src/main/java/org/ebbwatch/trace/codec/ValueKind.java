package org.ebbwatch.trace.codec;

/** What the 32 bits of a reading are. The numbers are part of the format of a segment and never change. */
public enum ValueKind {
    /** The board sends nothing for this quantity. */
    ABSENT(0),
    /** Whole counts of the board; its identity says what one count is. */
    COUNTS(1),
    /** The bit pattern of an IEEE 754 32-bit float as the board sent it, not-a-number patterns included. */
    FLOAT32(2);

    final int number;

    ValueKind(int number) {
        this.number = number;
    }

    static ValueKind of(int number) {
        for (ValueKind kind : values()) {
            if (kind.number == number) {
                return kind;
            }
        }
        throw new IllegalArgumentException("no value kind has number " + number);
    }
}
