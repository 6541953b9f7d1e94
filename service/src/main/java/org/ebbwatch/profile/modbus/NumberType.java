package org.ebbwatch.profile.modbus;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How registers hold a number. The bytes of one register always stand high byte first. */
public enum NumberType {
    INT16("int16", 1),
    UINT16("uint16", 1),
    INT32("int32", 2),
    UINT32("uint32", 2),
    /** IEEE 754 single precision. */
    FLOAT32("float32", 2);

    private final String key;
    private final int registers;

    NumberType(String key, int registers) {
        this.key = key;
        this.registers = registers;
    }

    /** How many registers it takes. */
    int registers() {
        return registers;
    }

    /**
     * The number of these bits. A float that is not finite, or so small that only its words in the wrong order make it (25.25 reads
     * as 2.4E-41 then, which would pass for 0), is NaN.
     *
     * @param bits of all its registers, the high register in the high bits
     */
    double read(int bits) {
        return switch (this) {
            case INT16 -> (short) bits;
            case UINT16 -> bits & 0xFFFF;
            case INT32 -> bits;
            case UINT32 -> Integer.toUnsignedLong(bits);
            case FLOAT32 -> {
                float number = Float.intBitsToFloat(bits);
                boolean usable = Float.isFinite(number) && (number == 0 || Math.abs(number) >= Float.MIN_NORMAL);
                yield usable ? number : Double.NaN;
            }
        };
    }

    /** The words by which profiles name them. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(type -> type.key).toList();
    }

    /** The one of this word. */
    public static Optional<NumberType> ofKey(String key) {
        return Arrays.stream(values()).filter(type -> type.key.equals(key)).findFirst();
    }
}
