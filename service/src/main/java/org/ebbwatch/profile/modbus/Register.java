package org.ebbwatch.profile.modbus;

import java.util.OptionalDouble;
import org.ebbwatch.profile.Quantity;

/**
 * A number in a device's registers.
 *
 * @param at its first register
 * @param type how it is held
 * @param order of the registers of a 32-bit number
 * @param open the number by which the device says that the sensor is open
 */
public record Register(Spot at, NumberType type, WordOrder order, OptionalDouble open) {

    public Register {
        if (at.table().isBits()) {
            throw new IllegalArgumentException("a number stands in holding or input registers, not in bits");
        }
    }

    /** What has to be read for it. */
    Span span() {
        return new Span(at, type.registers());
    }

    /**
     * The raw number in what a block held.
     *
     * @param data of a block that contains {@link #span}
     */
    double in(Span block, byte[] data) {
        int from = 2 * (at.address() - block.from().address());
        int first = word(data, from);
        if (type.registers() == 1) {
            return raw(first);
        }
        int second = word(data, from + 2);
        return raw(order == WordOrder.HIGH_FIRST ? (first << 16) | second : (second << 16) | first);
    }

    private double raw(int bits) {
        double number = type.read(bits);
        double marker = open.orElse(Double.NaN);
        return number == (type == NumberType.FLOAT32 ? (float) marker : marker) ? Quantity.OPEN : number;
    }

    private static int word(byte[] data, int from) {
        return ((data[from] & 0xFF) << 8) | (data[from + 1] & 0xFF);
    }
}
