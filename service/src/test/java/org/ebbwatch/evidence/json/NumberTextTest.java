package org.ebbwatch.evidence.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextTest {

    @Property(tries = 20_000)
    void every_finite_double_reads_back_bit_for_bit(@ForAll long bits) {
        double number = Double.longBitsToDouble(bits);
        if (Double.isNaN(number) || Double.isInfinite(number)) {
            return;
        }
        assertThat(Double.doubleToRawLongBits(Double.parseDouble(NumberText.of(number))))
                .isEqualTo(bits);
    }

    @Property(tries = 5_000)
    void what_a_board_counts_in_nanovolts_is_written_with_no_more_digits_than_it_has(
            @ForAll int counts, @ForAll @LongRange(min = 1, max = 1_000_000) long nanovolts) {
        double volts = counts * nanovolts / 1e9;
        String text = NumberText.of(volts);
        assertThat(Double.parseDouble(text)).isEqualTo(volts);
        assertThat(text).matches("-?\\d+(\\.\\d{0,8}[1-9])?");
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0.0, -0.0",
        "1, 1",
        "-1.5, -1.5",
        "3.7001, 3.7001",
        "0.000000001, 0.000000001",
        "0.1, 0.1",
        "86400000, 86400000",
        "9007199.254740991, 9007199.254740991",
        // from here on 17 digits: the number is no whole count of billionths
        "1e-10, 1.0000000000000000E-10",
        "1e300, 1.0000000000000001E+300",
        "4.9e-324, 4.9406564584124654E-324"
    })
    void numbers_look_like_this(double number, String text) {
        assertThat(NumberText.of(number)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void what_is_no_number_is_refused(double none) {
        assertThatThrownBy(() -> NumberText.of(none)).isInstanceOf(IllegalArgumentException.class);
    }
}
