package org.ebbwatch.judge.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CellCardTest {

    @Nested
    class A_card {

        @Test
        void bears_a_tag_of_one_to_sixty_four_characters() {
            assertThatCode(() -> card("A".repeat(64), 3, 10)).doesNotThrowAnyException();
            assertThatIllegalArgumentException().isThrownBy(() -> card("A".repeat(65), 3, 10));
            assertThatIllegalArgumentException().isThrownBy(() -> card(" ", 3, 10));
        }

        @ParameterizedTest
        @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
        void names_a_capacity_and_a_load_above_nought(double number) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> card("A1", number, 10))
                    .withMessageContaining("ampere hours");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> card("A1", 3, number))
                    .withMessageContaining("ohms");
        }

        @Test
        void names_a_string_only_of_a_cell_that_is_in_one() {
            var string = Optional.of(new CellString("P1", 0, 3));

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CellCard("A1", Chemistry.LFP, 3, 10, true, false, string));
            assertThatCode(() -> new CellCard("A1", Chemistry.LFP, 3, 10, true, true, string))
                    .doesNotThrowAnyException();
        }

        private static CellCard card(String tag, double ampereHours, double ohms) {
            return new CellCard(tag, Chemistry.LFP, ampereHours, ohms, true, false);
        }
    }

    @Nested
    class A_string {

        @ParameterizedTest
        @CsvSource({"-1, 2", "0, 1", "63, 2", "0, 65"})
        void reaches_over_two_or_more_of_channels_0_to_63(int firstChannel, int cells) {
            assertThatIllegalArgumentException().isThrownBy(() -> new CellString("P1", firstChannel, cells));
        }

        @Test
        void may_reach_from_the_first_channel_to_the_last() {
            var string = new CellString("P1", 0, 64);

            assertThat(string.lastChannel()).isEqualTo(63);
            assertThat(string.reachesOver(0)).isTrue();
            assertThat(string.reachesOver(63)).isTrue();
            assertThat(string.reachesOver(64)).isFalse();
            assertThat(string.reachesOver(-1)).isFalse();
        }

        @Test
        void overlaps_one_that_wants_a_channel_of_its_own() {
            var string = new CellString("P1", 2, 3);

            assertThat(string.overlaps(new CellString("P2", 0, 2))).isFalse();
            assertThat(string.overlaps(new CellString("P2", 0, 3))).isTrue();
            assertThat(string.overlaps(new CellString("P2", 4, 2))).isTrue();
            assertThat(string.overlaps(new CellString("P2", 5, 2))).isFalse();
        }

        @Test
        void bears_a_name_of_one_to_forty_characters() {
            assertThatCode(() -> new CellString("P".repeat(40), 0, 2)).doesNotThrowAnyException();
            assertThatIllegalArgumentException().isThrownBy(() -> new CellString("P".repeat(41), 0, 2));
            assertThatIllegalArgumentException().isThrownBy(() -> new CellString(" ", 0, 2));
        }
    }
}
