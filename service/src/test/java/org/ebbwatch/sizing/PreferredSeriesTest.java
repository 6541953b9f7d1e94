package org.ebbwatch.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ebbwatch.sizing.PreferredSeries.E24;
import static org.ebbwatch.sizing.PreferredSeries.E96;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values: IEC 60063. */
class PreferredSeriesTest {

    @Test
    void e24_is_the_table_of_the_standard_which_no_formula_gives() {
        assertThat(E24.mantissas())
                .containsExactly(
                        10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91);
        int off = 0;
        for (int i = 0; i < 24; i++) {
            off += Math.round(10 * Math.pow(10, i / 24.0)) == E24.mantissas().get(i) ? 0 : 1;
        }
        assertThat(off).isEqualTo(8);
    }

    @Test
    void e96_has_96_values_among_them_those_printed_in_the_standard() {
        assertThat(E96.mantissas()).hasSize(96);
        assertThat(E96.mantissas())
                .startsWith(100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143, 147, 150)
                .endsWith(931, 953, 976);
    }

    @ParameterizedTest
    @CsvSource({
        // wanted, at least, at most
        "16.0, 16, 16",
        "15.8, 16, 15",
        "9.3, 10, 9.1",
        "91.5, 100, 91",
        "0.472, 0.51, 0.47",
        "4.7, 4.7, 4.7",
        "1000, 1000, 1000",
        "999, 1000, 910"
    })
    void the_nearest_e24_value_on_either_side_is_found_over_decades(double wanted, double above, double below) {
        assertThat(E24.atLeast(wanted)).isEqualTo(above);
        assertThat(E24.atMost(wanted)).isEqualTo(below);
    }

    @Property
    void a_value_that_is_wanted_lies_between_its_neighbours_which_are_no_further_apart_than_the_series(
            @ForAll @DoubleRange(min = 0.01, max = 1e5) double wanted) {
        assertThat(E96.atMost(wanted)).isLessThanOrEqualTo(wanted * (1 + 1e-9));
        assertThat(E96.atLeast(wanted)).isGreaterThanOrEqualTo(wanted * (1 - 1e-9));
        assertThat(E96.atLeast(wanted) / E96.atMost(wanted)).isBetween(1.0, 1.031); // 133 to 137
        assertThat(E24.atLeast(wanted) / E24.atMost(wanted)).isBetween(1.0, 1.16);
    }

    @Property
    void a_value_of_the_series_is_its_own_neighbour(@ForAll @DoubleRange(min = 0.01, max = 1e5) double any) {
        double value = E24.atLeast(any);

        assertThat(E24.atLeast(value)).isCloseTo(value, within(value * 1e-12));
        assertThat(E24.atMost(value)).isCloseTo(value, within(value * 1e-12));
    }
}
