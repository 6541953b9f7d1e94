package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TraceCsvTest {
    @TempDir
    Path folder;

    private static final String UTC = "2025-06-15T15:06:40.000Z";
    private static final String ROW = "1,1000," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,false,NONE";

    @Property
    void every_reading_comes_back_as_the_judge_saw_it(@ForAll("scans") List<Entry.Scan> scans) throws IOException {
        List<Entry.Scan> back = new ArrayList<>();
        read(write(scans)).forEach(row -> back.add(row.scan()));
        // a record's own comparison tells -0.0 from 0.0 and takes one NaN for another
        assertThat(back).isEqualTo(scans);
    }

    @Property
    void every_line_is_of_the_grammar_of_rfc_4180_and_no_field_can_be_taken_for_a_formula(
            @ForAll("scans") List<Entry.Scan> scans) throws IOException {
        String text = write(scans);
        assertThat(text).endsWith("\r\n");
        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n", "\"", "\t");
        List<String> lines = text.lines().toList();
        assertThat(lines).hasSize(scans.size() + 1);
        for (String line : lines.subList(1, lines.size())) {
            assertThat(line.split(",", -1))
                    .hasSize(TraceCsv.COLUMNS.size())
                    .allMatch(field -> field.matches("|-?\\d+(\\.\\d+)?(E[-+]\\d+)?|" + UTC + "|true|false|[A-Z_]+"));
        }
    }

    @Test
    void an_independent_reader_finds_every_quantity_in_its_column() throws IOException {
        byte[] trace = Bundles.parts(Bundles.write(InventedPassage.whole("A-17"), folder))
                .get("trace.csv");
        List<Entry.Scan> scans = InventedPassage.whole("A-17").scans();
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = CSVParser.parse(new String(trace, StandardCharsets.US_ASCII), format)) {
            int at = 0;
            for (CSVRecord row : parser) {
                Entry.Scan scan = scans.get(at++);
                assertThat(Long.parseLong(row.get("event_millis"))).isEqualTo(scan.eventMillis());
                assertThat(Double.parseDouble(row.get("volts"))).isEqualTo(scan.volts());
                assertThat(Double.parseDouble(row.get("celsius"))).isEqualTo(scan.celsius());
                assertThat(row.get("bank_celsius")).isEmpty();
                assertThat(Boolean.parseBoolean(row.get("load_applied"))).isEqualTo(scan.loadApplied());
                assertThat(Instant.parse(row.get("wall_utc"))).isAfter(Instant.parse("2025-06-15T15:06:40Z"));
            }
            assertThat(at).isEqualTo(scans.size());
        }
    }

    @Test
    void a_million_rows_stream_through_without_being_held() throws IOException {
        long[] longestAndAll = new long[2];
        var writer = new TraceCsvWriter(
                new OutputStream() {
                    @Override
                    public void write(int one) {
                        longestAndAll[1]++;
                    }

                    @Override
                    public void write(byte[] bytes, int from, int length) {
                        longestAndAll[0] = Math.max(longestAndAll[0], length);
                        longestAndAll[1] += length;
                    }
                },
                false);
        Entry.Scan scan = InventedPassage.brief("A-17").scans().get(0);
        for (int i = 0; i < 1_000_000; i++) {
            writer.row(i, UTC, scan);
        }
        writer.flush();
        assertThat(longestAndAll[1]).isGreaterThan(80_000_000);
        assertThat(longestAndAll[0]).isLessThan(70_000);
    }

    @Test
    void sequence_and_label_come_back_too() throws IOException {
        List<TraceCsvReader.Row> rows = read(TraceCsv.HEADER + "\r\n" + ROW + "\r\n");
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).sequence()).isEqualTo(1);
        assertThat(rows.get(0).wallUtc()).isEqualTo(UTC);
        assertThat(rows.get(0).scan().amperes()).isNaN();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1,1000," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,false",
                ROW + ",",
                "1,1000," + UTC + ",=3.7,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",NaN,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",1E999,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",0x1p3,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ", 3.7,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",3.7,0,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",3.7,,0.0001,21,20.8,,,,false,NONE",
                "1,1000," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,no,NONE",
                "1,1000," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,false,ODD",
                "1,1e3," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,false,NONE",
                "1,1000,yesterday,3.7,0.002,0.0001,21,20.8,,,,false,NONE",
                "\"1\",1000," + UTC + ",3.7,0.002,0.0001,21,20.8,,,,false,NONE",
                ""
            })
    void a_line_that_is_no_reading_is_named(String line) {
        assertThatThrownBy(() -> read(TraceCsv.HEADER + "\r\n" + ROW + "\r\n" + line + "\r\n"))
                .isInstanceOf(DamageException.class)
                .hasMessageStartingWith("line 3 ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "sequence\r\n", "HEADER\n", "HEADER"})
    void without_its_header_it_is_no_trace(String text) {
        assertThatThrownBy(() -> read(text.replace("HEADER", TraceCsv.HEADER)))
                .isInstanceOf(DamageException.class)
                .hasMessageStartingWith("line 1 ");
    }

    @Test
    void a_line_without_end_is_refused_before_it_fills_the_memory() {
        assertThatThrownBy(() -> read(TraceCsv.HEADER + "\r\n" + "1".repeat(600)))
                .isInstanceOf(DamageException.class)
                .hasMessageStartingWith("line 2 does not end");
    }

    @Provide
    Arbitrary<List<Entry.Scan>> scans() {
        Arbitrary<Double> quantities = Arbitraries.oneOf(
                Arbitraries.just(Double.NaN),
                Arbitraries.integers().map(counts -> counts * 100_000L / 1e9),
                Arbitraries.doubles());
        Arbitrary<Double> aboveZero = Arbitraries.doubles().between(0, false, 1e6, true);
        return Combinators.combine(
                        Arbitraries.longs(),
                        quantities.list().ofSize(6),
                        aboveZero,
                        aboveZero,
                        Arbitraries.of(true, false),
                        Arbitraries.of(Suspicion.class))
                .as((millis, six, expanded, resolution, load, suspect) -> new Entry.Scan(
                        millis,
                        six.get(0),
                        expanded,
                        resolution,
                        six.get(1),
                        six.get(2),
                        six.get(3),
                        six.get(4),
                        six.get(5),
                        load,
                        suspect))
                .list()
                .ofMaxSize(20);
    }

    @Test
    void a_cell_of_a_string_has_a_column_more() throws IOException {
        var scan = new Entry.Scan(
                1_000, 3.6, 0.002, 1e-4, 0.5, 20, 21, Double.NaN, Double.NaN, true, Entry.Suspicion.NONE, 10.8001);
        var unknown = new Entry.Scan(
                2_000, 3.6, 0.002, 1e-4, 0.5, 20, 21, Double.NaN, Double.NaN, true, Entry.Suspicion.NONE);

        String text = write(List.of(scan, unknown));

        assertThat(text.lines().toList().get(0)).isEqualTo(TraceCsv.HEADER + ",string_volts");
        assertThat(read(text)).extracting(TraceCsvReader.Row::scan).containsExactly(scan, unknown);
    }

    private static String write(List<Entry.Scan> scans) throws IOException {
        var out = new ByteArrayOutputStream();
        var writer = new TraceCsvWriter(out, scans.stream().anyMatch(scan -> !Double.isNaN(scan.stringVolts())));
        long sequence = 1;
        for (Entry.Scan scan : scans) {
            writer.row(sequence++, UTC, scan);
        }
        writer.flush();
        return out.toString(StandardCharsets.US_ASCII);
    }

    private static List<TraceCsvReader.Row> read(String text) throws IOException {
        var reader = new TraceCsvReader(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        List<TraceCsvReader.Row> rows = new ArrayList<>();
        for (Optional<TraceCsvReader.Row> row = reader.next(); row.isPresent(); row = reader.next()) {
            rows.add(row.get());
        }
        return rows;
    }
}
