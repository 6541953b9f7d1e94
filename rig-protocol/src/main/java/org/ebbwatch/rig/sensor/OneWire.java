package org.ebbwatch.rig.sensor;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * A digital 1-Wire thermometer, -55 to 125 degrees Celsius, and the numbers it gives that are no temperatures. Source: the
 * data sheet of the DS18B20 (range, register, value at power-on); -127 is common practice of drivers.
 *
 * @param toleranceKelvin how far the sensor may be off, plus or minus; the data sheet says 0.5 K from -10 to 85 degrees
 */
public record OneWire(double toleranceKelvin) {
    /** How many bytes the scratchpad has. */
    public static final int SCRATCHPAD_BYTES = 9;

    private static final double LOWEST_CELSIUS = -55;
    private static final double HIGHEST_CELSIUS = 125;
    private static final double AT_POWER_ON = 85;
    private static final double NOT_FOUND = -127;
    private static final double KELVIN_PER_COUNT = 0.0625;
    private static final int REFLECTED_POLYNOMIAL = 0x8C;

    public OneWire {
        Uncertainty.require("toleranceKelvin", toleranceKelvin);
    }

    /**
     * What a driver's number comes to. Exactly 85 is what the register holds before the first measurement, exactly 0 what a
     * shorted bus gives, for nine zero bytes pass the checksum. A true temperature passes through either within a sixteenth of a
     * kelvin; one scan without a temperature is a small price for it.
     */
    public Conversion convert(double celsius) {
        if (Double.isNaN(celsius)) {
            return Conversion.Fault.NOT_A_NUMBER;
        }
        if (celsius == NOT_FOUND) {
            return Conversion.Fault.OPEN;
        }
        if (celsius == AT_POWER_ON) {
            return Conversion.Fault.NOT_MEASURED;
        }
        if (celsius == 0) {
            return Conversion.Fault.SHORT;
        }
        if (celsius < LOWEST_CELSIUS || celsius > HIGHEST_CELSIUS) {
            return Conversion.Fault.OUT_OF_RANGE;
        }
        return new Conversion.Celsius(celsius, Uncertainty.expanded(Uncertainty.rectangular(toleranceKelvin)));
    }

    /** The number in a scratchpad of 9 bytes, for {@link #convert}; empty where the checksum is wrong. */
    public static OptionalDouble celsius(byte[] scratchpad) {
        if (scratchpad.length != SCRATCHPAD_BYTES
                || crc8(Arrays.copyOf(scratchpad, SCRATCHPAD_BYTES - 1)) != (scratchpad[8] & 0xFF)) {
            return OptionalDouble.empty();
        }
        int counts = (scratchpad[1] << 8) | (scratchpad[0] & 0xFF);
        return OptionalDouble.of(counts * KELVIN_PER_COUNT);
    }

    /** CRC-8/MAXIM-DOW: polynomial 0x31 reflected, from 0. Source: the published catalogue of checksums. */
    static int crc8(byte[] bytes) {
        int crc = 0;
        for (byte each : bytes) {
            crc ^= each & 0xFF;
            for (int bit = 0; bit < Byte.SIZE; bit++) {
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ REFLECTED_POLYNOMIAL;
            }
        }
        return crc;
    }
}
