package org.ebbwatch.trace.codec;

/**
 * What the readings of one board are.
 *
 * @param volts counts or floats
 * @param celsius counts or floats
 * @param amperes counts, floats or absent
 */
public record ValueKinds(ValueKind volts, ValueKind celsius, ValueKind amperes) {

    /** Volts, degrees and amperes in counts: a board that speaks the rig protocol and measures current. */
    public static final ValueKinds COUNTS = new ValueKinds(ValueKind.COUNTS, ValueKind.COUNTS, ValueKind.COUNTS);

    /** Volts and degrees in counts, no amperes. */
    public static final ValueKinds COUNTS_WITHOUT_AMPERES = COUNTS.withoutAmperes();

    public ValueKinds {
        if (volts == ValueKind.ABSENT || celsius == ValueKind.ABSENT) {
            throw new IllegalArgumentException(
                    "volts and celsius are in every scan, a reading may only be marked invalid");
        }
    }

    public ValueKinds withoutAmperes() {
        return new ValueKinds(volts, celsius, ValueKind.ABSENT);
    }

    public boolean hasAmperes() {
        return amperes != ValueKind.ABSENT;
    }

    /** Two bits per quantity: volts in bits 0 and 1, celsius in 2 and 3, amperes in 4 and 5. */
    public byte toByte() {
        return (byte) (volts.number | (celsius.number << 2) | (amperes.number << 4));
    }

    /**
     * Reads what {@link #toByte} wrote.
     *
     * @throws IllegalArgumentException if no kinds have this byte
     */
    public static ValueKinds of(byte bits) {
        return new ValueKinds(ValueKind.of(bits & 3), ValueKind.of((bits >> 2) & 3), ValueKind.of((bits & 0xFF) >> 4));
    }
}
