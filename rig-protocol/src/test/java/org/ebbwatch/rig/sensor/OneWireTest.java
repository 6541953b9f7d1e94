package org.ebbwatch.rig.sensor;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.OptionalDouble;
import org.ebbwatch.rig.sensor.Conversion.Celsius;
import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source of the scratchpads and of the value at power-on: the data sheet of the DS18B20; -127: common practice of drivers. */
class OneWireTest {
    private final OneWire sensor = new OneWire(0.5);

    @ParameterizedTest
    @CsvSource({"85, NOT_MEASURED", "-127, OPEN", "0, SHORT", "-55.0625, OUT_OF_RANGE", "125.0625, OUT_OF_RANGE"})
    void its_false_values_are_no_temperatures(double celsius, Fault fault) {
        assertThat(sensor.convert(celsius)).isEqualTo(fault);
        assertThat(sensor.convert(Double.NaN)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    /** Half-width 0.5 K, all of it equally likely: U = 2 x 0.5 / sqrt(3). */
    @Test
    void what_lies_a_sixteenth_of_a_kelvin_beside_them_is_measured() {
        for (double celsius : new double[] {-55, -0.0625, 0.0625, 21.5, 84.9375, 85.0625, 125}) {
            assertThat(sensor.convert(celsius)).isInstanceOfSatisfying(Celsius.class, it -> {
                assertThat(it.celsius()).isEqualTo(celsius);
                assertThat(it.expandedCelsius()).isCloseTo(0.57735, within(1e-5));
            });
        }
    }

    /** Rows of the data sheet's table of the register, with whatever fills the bytes up to the checksum. */
    @ParameterizedTest
    @CsvSource({
        "D0 07, 125",
        "91 01, 25.0625",
        "A2 00, 10.125",
        "08 00, 0.5",
        "F8 FF, -0.5",
        "5E FF, -10.125",
        "90 FC, -55"
    })
    void the_register_is_sixteenths_of_a_degree(String register, double celsius) {
        byte[] eight = HexFormat.ofDelimiter(" ").parseHex(register + " 4B 46 7F FF 0C 10");
        byte[] scratchpad = Arrays.copyOf(eight, OneWire.SCRATCHPAD_BYTES);
        scratchpad[8] = (byte) OneWire.crc8(eight);
        assertThat(OneWire.celsius(scratchpad)).hasValue(celsius);
    }

    @Test
    void the_scratchpad_at_power_on_reads_eighty_five_and_is_not_measured() {
        OptionalDouble read = OneWire.celsius(scratchpad("50 05 4B 46 7F FF 0C 10 1C"));
        assertThat(read).hasValue(85);
        assertThat(sensor.convert(read.getAsDouble())).isEqualTo(Fault.NOT_MEASURED);
    }

    /** The trap: nine zero bytes have the checksum zero. */
    @Test
    void an_all_zero_scratchpad_passes_its_checksum_and_is_a_short() {
        OptionalDouble read = OneWire.celsius(scratchpad("00 00 00 00 00 00 00 00 00"));
        assertThat(read).hasValue(0);
        assertThat(sensor.convert(read.getAsDouble())).isEqualTo(Fault.SHORT);
    }

    @Test
    void a_damaged_or_cut_scratchpad_holds_nothing() {
        assertThat(OneWire.celsius(scratchpad("51 05 4B 46 7F FF 0C 10 1C"))).isEmpty();
        assertThat(OneWire.celsius(scratchpad("FF FF FF FF FF FF FF FF FF"))).isEmpty();
        assertThat(OneWire.celsius(scratchpad("50 05 4B"))).isEmpty();
    }

    /** Source: the published catalogue of checksums, CRC-8/MAXIM-DOW. */
    @Test
    void the_checksum_agrees_with_the_catalogue() {
        assertThat(OneWire.crc8("123456789".getBytes(US_ASCII))).isEqualTo(0xA1);
        assertThat(OneWire.crc8(scratchpad("02 1C B8 01 00 00 00"))).isEqualTo(0xA2);
    }

    private static byte[] scratchpad(String hex) {
        return HexFormat.ofDelimiter(" ").parseHex(hex);
    }
}
