package org.ebbwatch.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.ebbwatch.replay.Recording.Row;
import org.ebbwatch.replay.Recording.Unreadable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordingTest {

    @Nested
    class Columns {

        @Test
        void are_known_by_plain_names_in_any_order() throws Unreadable {
            var recording = Recording.parse("ambient,volts,celsius,amperes,seconds\n21,3.70,22.5,0.37,1.5\n");

            assertThat(recording.rows()).containsExactly(new Row(1.5, 3.7, 0.37, 22.5, 21));
        }

        @Test
        void are_known_by_names_with_units_and_others_are_passed_over() throws Unreadable {
            var recording = Recording.parse("t_s,v_V,i_discharge_A,t_cell_C,mode\n0,4.1,-0.02,25,\"REST, long\"\n");

            assertThat(recording.rows()).hasSize(1);
            assertThat(recording.rows().get(0).celsius()).isEqualTo(25);
            assertThat(recording.rows().get(0).ambient()).isNaN();
        }

        @Test
        void may_be_quoted_and_lines_may_end_as_the_standard_says() throws Unreadable {
            var recording = Recording.parse(
                    "\uFEFF\"seconds\",\"volts\",\"note\"\r\n0,4.1,\"said \"\"off\"\"\r\nthen on\"\r\n1,4.0,\r\n\r\n");

            assertThat(recording.rows()).extracting(Row::volts).containsExactly(4.1, 4.0);
        }

        @Test
        void that_are_empty_were_not_read() throws Unreadable {
            var recording = Recording.parse("seconds,volts,amperes\n0,,1\n1,3.9,\n");

            assertThat(recording.rows().get(0).volts()).isNaN();
            assertThat(recording.rows().get(1).amperes()).isNaN();
        }
    }

    @ParameterizedTest
    @CsvSource({"3.7,0.1", "4.1761,1e-4", "2,1", "-.25,0.01", "3.4E+38,1", "'',1"})
    void the_resolution_is_that_of_the_decimals_of_a_voltage(String volts, double resolution) throws Unreadable {
        assertThat(Recording.parse("seconds,volts\n0," + volts + "\n").resolutionVolts())
                .isCloseTo(resolution, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'seconds,volts\n0,4.1\n1,4.1V\n'; line 3, field 2: \"4.1V\" is no number",
                "'seconds,volts\n0,1d\n'; line 2, field 2: \"1d\" is no number",
                "'seconds,volts\n0,.\n'; line 2, field 2: \".\" is no number",
                "'seconds,volts\n0,4.1,7\n'; line 2: 3 fields where the header has 2",
                "'seconds,volts\n,4.1\n'; line 2: seconds must be there and rise",
                "'seconds,volts\n0,\"4.1\n'; line 2: a quote is opened and never closed",
                "'seconds,volts\n0,\"4\"1\n'; line 2: text follows a closed quote",
            })
    void what_cannot_be_read_is_refused_with_its_place(String text, String message) {
        assertThatThrownBy(() -> Recording.parse(text))
                .isInstanceOf(Unreadable.class)
                .hasMessageStartingWith(message);
    }
}
