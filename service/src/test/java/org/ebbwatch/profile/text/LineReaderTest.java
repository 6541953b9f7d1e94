package org.ebbwatch.profile.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.profile.Quantity;
import org.ebbwatch.profile.file.ProfileFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineReaderTest {
    private static final String CHANNELS =
            """
            converter: {lowestVolts: 0, highestVolts: 10, offsetMillivolts: 1, gainPercent: 0.1}
            channels:
              - role: cell
                volts: {column: u, unit: mV, decimals: 1}
                celsius: {column: t, open: -127, sensor: {type: degrees, uncertainty: 1}}
            """;
    private static final String SEMICOLONS = "separator: semicolon\ndecimal: comma\ncolumns: [ms, u, t]\nclock: ms\n";

    @Test
    void a_line_is_a_scan_with_the_board_s_milliseconds() throws RackFileFaulty {
        LineScan.Scan scan = (LineScan.Scan) reader(SEMICOLONS).read(" 4294967295 ; 3712,4; -0,5");
        assertThat(scan.millis()).hasValue(4_294_967_295L);
        assertThat(scan.raws()).containsExactly(3_712.4, -0.5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "comma | point | 7,3712.4,22.5",
                "tab | point | 7\t3712.4\t22.5",
                "space | point | '  7   3712.4 \t 22.5 '",
                "space | comma | 7 3712,4 22,5",
                "semicolon | point | 7;3712.4;2.25e1"
            })
    void separators_and_decimal_marks_are_the_profile_s(String separator, String decimal, String line)
            throws RackFileFaulty {
        String profile = "separator: " + separator + "\ndecimal: " + decimal + "\ncolumns: [ms, u, t]\nclock: ms\n";
        assertThat(((LineScan.Scan) reader(profile).read(line)).raws()).containsExactly(3_712.4, 22.5);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "7;3712,4 | 2 columns instead of 3",
                "7;3712,4;22,5;1 | 4 columns instead of 3",
                "7,3712.4,22.5 | 1 columns instead of 3",
                "ets Jan  8;2013;rst cause:2 | no milliseconds",
                "-7;3712,4;22,5 | no milliseconds",
                "4294967296;3712,4;22,5 | no milliseconds",
                "7;3712;22,5 | decimals",
                "7;3712,45;22,5 | decimals",
                "7;1;2 | decimals",
                "7;nan;open | no number",
                "7;; | no number"
            })
    void a_line_that_does_not_fit_is_refused_whole_and_shown(String line, String why) throws RackFileFaulty {
        assertThat(reader(SEMICOLONS).read(line))
                .isInstanceOfSatisfying(
                        LineScan.Refused.class, it -> assertThat(it.why()).contains(why, line));
    }

    @ParameterizedTest
    @ValueSource(strings = {"nan", "inf", "Infinity", "", "--", "0x10", "1_0", "3712.4", "12 34", "1e999", "٣"})
    void what_is_no_number_is_missing_and_never_nought(String cell) throws RackFileFaulty {
        LineScan.Scan scan = (LineScan.Scan) reader(SEMICOLONS).read("7;3712,4;" + cell);
        assertThat(scan.raws()[0]).isEqualTo(3_712.4);
        assertThat(scan.raws()[1]).isNaN();
    }

    @Test
    void the_number_of_an_open_sensor_is_no_temperature() throws RackFileFaulty {
        assertThat(((LineScan.Scan) reader(SEMICOLONS).read("7;3712,4;-127,00")).raws()[1])
                .isEqualTo(Quantity.OPEN);
    }

    @Test
    void headers_and_comments_are_passed_over() throws RackFileFaulty {
        LineReader reader = reader(SEMICOLONS);
        assertThat(reader.read("ms;u;t")).isInstanceOf(LineScan.Nothing.class);
        assertThat(reader.read("# 7;3712,4;22,5")).isInstanceOf(LineScan.Nothing.class);
    }

    @Test
    void without_named_columns_the_board_s_header_says_where_they_are() throws RackFileFaulty {
        LineReader reader = reader("clock: ms\n");
        assertThat(reader.read("7,3712.4,22.5"))
                .isInstanceOfSatisfying(
                        LineScan.Refused.class, it -> assertThat(it.why()).contains("names its columns"));
        assertThat(reader.read("t, spare, ms, u")).isInstanceOf(LineScan.Nothing.class);
        assertThat(((LineScan.Scan) reader.read("22.5,x,7,3712.4")).raws()).containsExactly(3_712.4, 22.5);
        assertThat(reader.read("22.5,7,3712.4")).isInstanceOf(LineScan.Refused.class);
        assertThat(reader.read("ms,u,t")).isInstanceOf(LineScan.Nothing.class);
        assertThat(((LineScan.Scan) reader.read("7,3712.4,22.5")).raws()).containsExactly(3_712.4, 22.5);
    }

    /** Source of the scratchpad at power-on: the data sheet of the DS18B20. */
    @Test
    void a_one_wire_scratchpad_is_read_with_its_checksum() throws RackFileFaulty {
        String profile =
                """
                protocol: text
                intervalMillis: 1000
                columns: [t]
                channels:
                  - {role: watch, celsius: {column: t, form: scratchpad, sensor: {type: oneWire}}}
                """;
        var reader = new LineReader((TextProfile) ProfileFile.parse(profile, "profile.yml"));
        assertThat(((LineScan.Scan) reader.read("50054B467FFF0C101C")).raws()).containsExactly(85);
        assertThat(reader.read("51054B467FFF0C101C")).isInstanceOf(LineScan.Refused.class);
        assertThat(reader.read("22.5")).isInstanceOf(LineScan.Refused.class);
    }

    private static LineReader reader(String profile) throws RackFileFaulty {
        String text = "protocol: text\nintervalMillis: 1000\n" + profile + CHANNELS;
        return new LineReader((TextProfile) ProfileFile.parse(text, "profile.yml"));
    }
}
