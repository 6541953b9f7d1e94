package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HexFormat;
import java.util.OptionalDouble;
import org.ebbwatch.profile.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bit patterns of floats: IEEE 754, 1.0 is 3F800000 and 25.25 is 41CA0000 (computed by hand). */
class RegisterTest {
    private static final Span BLOCK = new Span(new Spot(1, Table.INPUT_REGISTERS, 9), 4);

    @ParameterizedTest
    @CsvSource({
        "INT16, FFEC, -20",
        "INT16, 7FFF, 32767",
        "UINT16, FFEC, 65516",
        "INT32, FFFFFFEC, -20",
        "INT32, 0038A559, 3712345",
        "UINT32, FFFFFFEC, 4294967276",
        "FLOAT32, 3F800000, 1",
        "FLOAT32, 41CA0000, 25.25",
        "FLOAT32, C1CA0000, -25.25",
        "FLOAT32, 00000000, 0"
    })
    void numbers_are_read_high_word_first_or_low_word_first(NumberType type, String hex, double number) {
        assertThat(read(type, WordOrder.HIGH_FIRST, hex, OptionalDouble.empty()))
                .isEqualTo(number);
        String turned = hex.length() == 8 ? hex.substring(4) + hex.substring(0, 4) : hex;
        assertThat(read(type, WordOrder.LOW_FIRST, turned, OptionalDouble.empty()))
                .isEqualTo(number);
    }

    @ParameterizedTest
    @CsvSource({"7FC00000", "7F800000", "FF800000", "000041CA", "00000001", "800041CA"})
    void a_float_that_is_no_measurement_is_no_number(String hex) {
        assertThat(read(NumberType.FLOAT32, WordOrder.HIGH_FIRST, hex, OptionalDouble.empty()))
                .isNaN();
    }

    @Test
    void the_number_of_an_open_sensor_is_told_from_every_other() {
        OptionalDouble open = OptionalDouble.of(-999.9);
        String marker = HexFormat.of().toHexDigits(Float.floatToIntBits(-999.9f));
        assertThat(read(NumberType.FLOAT32, WordOrder.HIGH_FIRST, marker, open)).isEqualTo(Quantity.OPEN);
        assertThat(read(NumberType.INT32, WordOrder.HIGH_FIRST, "7FFFFFFF", OptionalDouble.of(2_147_483_647)))
                .isEqualTo(Quantity.OPEN);
        assertThat(read(NumberType.INT32, WordOrder.HIGH_FIRST, "7FFFFFFE", OptionalDouble.of(2_147_483_647)))
                .isEqualTo(2_147_483_646);
    }

    @Test
    void a_number_does_not_stand_in_bits() {
        Spot coil = new Spot(1, Table.COILS, 0);
        assertThatThrownBy(() -> new Register(coil, NumberType.INT16, WordOrder.HIGH_FIRST, OptionalDouble.empty()))
                .hasMessageContaining("bits");
    }

    /** The register is the second of a block of four. */
    private static double read(NumberType type, WordOrder order, String hex, OptionalDouble open) {
        var register = new Register(new Spot(1, Table.INPUT_REGISTERS, 10), type, order, open);
        byte[] data = HexFormat.of().parseHex(("1234" + hex + "12341234").substring(0, 16));
        return register.in(BLOCK, data);
    }
}
