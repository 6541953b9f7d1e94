package org.ebbwatch.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvWriterTest {

    private static String written(Object... fields) throws IOException {
        var out = new ByteArrayOutputStream();
        new CsvWriter(out).line(Arrays.asList(fields));
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void quotes_are_doubled_and_lines_end_as_rfc_4180_has_it() throws IOException {
        assertThat(written("a", "b,c", "d\"e", "f\ng", null, 1.5)).isEqualTo("a,\"b,c\",\"d\"\"e\",\"f\ng\",,1.5\r\n");
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            value = {"=1+1", "+1+1", "-1+1", "@SUM(A1)", "-", "=", "+49 30"})
    void what_a_spreadsheet_would_calculate_gets_an_apostrophe(String field) throws IOException {
        assertThat(written(field)).isEqualTo("'" + field + "\r\n");
    }

    @ParameterizedTest
    @CsvSource({"-1", "-0.25", "1E-10", "-3.5e+7", "a=b", "a-1"})
    void numbers_and_plain_words_are_left_alone(String field) throws IOException {
        assertThat(written(field)).isEqualTo(field + "\r\n");
    }

    @Property(tries = 500)
    void an_independent_reader_reads_what_was_written(@ForAll @Size(min = 2, max = 5) List<String> fields)
            throws IOException {
        List<String> wellFormed = fields.stream()
                .map(field -> new String(field.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8))
                .toList();
        String text = written(wellFormed.toArray());
        try (var parser = CSVParser.parse(text, CSVFormat.RFC4180)) {
            List<String> read = parser.getRecords().get(0).toList();
            assertThat(read).hasSameSizeAs(wellFormed);
            for (int i = 0; i < read.size(); i++) {
                assertThat(read.get(i)).isIn(wellFormed.get(i), "'" + wellFormed.get(i));
            }
        }
    }

    @Test
    void a_million_lines_stream_through_without_being_held() throws IOException {
        long[] longestAndAll = new long[2];
        var csv = new CsvWriter(new OutputStream() {
            @Override
            public void write(int one) {
                longestAndAll[1]++;
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                longestAndAll[0] = Math.max(longestAndAll[0], length);
                longestAndAll[1] += length;
            }
        });
        for (int i = 0; i < 1_000_000; i++) {
            csv.line(List.of(i, "3.7001", "false"));
        }
        assertThat(longestAndAll[1]).isGreaterThan(15_000_000);
        assertThat(longestAndAll[0]).isLessThan(100);
    }
}
