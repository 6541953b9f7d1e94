package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.ebbwatch.evidence.Written.Became;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BundleWriterTest {

    @TempDir
    Path folder;

    @Test
    void a_bundle_has_its_parts_in_one_order_and_bears_the_cells_tag() throws IOException {
        Path bundle = Bundles.write(InventedPassage.whole("A-17"), folder);
        assertThat(bundle).hasFileName("A-17-456789ab.ebb.zip");
        assertThat(Bundles.parts(bundle).keySet())
                .containsExactly(
                        "trace.csv",
                        "record.json",
                        "chain.json",
                        "report.pdf",
                        "datapackage.json",
                        "manifest.json",
                        "signature.json");
    }

    @Test
    void the_trace_holds_every_reading_as_the_judge_saw_it() throws IOException {
        InventedPassage passage = InventedPassage.whole("A-17");
        byte[] trace = Bundles.parts(Bundles.write(passage, folder)).get("trace.csv");
        var reader = new TraceCsvReader(new ByteArrayInputStream(trace));
        List<Entry.Scan> scans = new ArrayList<>();
        for (Optional<TraceCsvReader.Row> row = reader.next(); row.isPresent(); row = reader.next()) {
            scans.add(row.get().scan());
        }
        assertThat(scans).isEqualTo(passage.scans()).hasSizeGreaterThan(300);
    }

    @Test
    void the_same_passage_gives_the_same_bytes() throws IOException {
        Path one = Bundles.write(InventedPassage.whole("A-17"), folder.resolve("one"));
        Path other = Bundles.write(InventedPassage.whole("A-17"), folder.resolve("other"));
        assertThat(one).hasSameBinaryContentAs(other);
    }

    @Test
    void readings_after_the_end_of_a_passage_are_another_ones() throws IOException {
        InventedPassage brief = InventedPassage.brief("A-17");
        Path without = Bundles.write(brief, folder.resolve("without"));
        Path with = Bundles.write(brief.reads(5, 4.1, 4.1, false), folder.resolve("with"));
        assertThat(with).hasSameBinaryContentAs(without);
    }

    @Test
    void a_bundle_that_is_there_is_left_as_it_is() throws IOException {
        var writer = new BundleWriter(Origin.current(), Bundles.KEY);
        Written first = writer.write(InventedPassage.brief("A-17").records(), folder);
        assertThat(first.became()).isEqualTo(Became.WRITTEN);
        assertThat(first.phase()).isEqualTo("WITHDRAWN");
        assertThat(first.readings()).isEqualTo(12);
        byte[] before = Files.readAllBytes(first.file());
        assertThat(writer.write(InventedPassage.brief("A-17").records(), folder).became())
                .isEqualTo(Became.THERE_ALREADY);
        PassageRecords other =
                new InventedPassage("A-17", false).reads(3, 1, 1, false).records();
        assertThat(writer.write(other, folder).became()).isEqualTo(Became.ANOTHER_IS_THERE);
        assertThat(first.file()).hasBinaryContent(before);
        assertThat(filesIn(folder)).containsExactly(first.file());
    }

    @Test
    void nothing_is_left_of_a_bundle_that_could_not_be_finished() {
        PassageRecords records = InventedPassage.whole("A-17").records();
        var broken = new PassageRecords(
                records.card(),
                taker -> {
                    records.journal().accept(taker);
                    throw new IllegalStateException("the disk is gone");
                },
                records.writtenDown(),
                records.chain(),
                records.intake());
        assertThatThrownBy(() -> new BundleWriter(Origin.current(), Bundles.KEY).write(broken, folder))
                .hasMessage("the disk is gone");
        assertThat(filesIn(folder)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=HYPERLINK(\"http://x.example\")",
                "+1",
                "-1+1",
                "@SUM(A1)",
                "\t=1",
                "\r\n=1,2",
                "../../x",
                "<b>"
            })
    void a_tag_that_means_harm_reaches_neither_the_trace_nor_the_file_system(String tag) throws IOException {
        Path bundle = Bundles.write(InventedPassage.brief(tag), folder);
        assertThat(bundle).hasParent(folder);
        String trace = Bundles.text(bundle, "trace.csv");
        assertThat(trace.replace("\r\n", "")).doesNotContain("\r", "\n", "\t", "=", "@", "+", "<", "HYPERLINK");
        assertThat(trace.lines()).allMatch(line -> line.split(",", -1).length == TraceCsv.COLUMNS.size());
        assertThat(BundleRecord.read(Bundles.parts(bundle).get("record.json"))
                        .cell()
                        .tag())
                .isEqualTo(tag);
    }

    @Test
    void the_record_says_what_a_reader_must_know() throws IOException {
        Path bundle = Bundles.write(InventedPassage.whole("A-17"), folder);
        JsonObject record = JsonObject.read(Bundles.parts(bundle).get("record.json"));
        assertThat(record.text("passage")).isEqualTo(InventedPassage.ID.toString());
        assertThat(record.truth("simulated")).isTrue();
        assertThat(record.number("simulatedSpeed")).isEqualTo(600);
        assertThat(record.object("madeBy").text("software")).isEqualTo(Origin.SOFTWARE);
        assertThat(record.object("item").text("tag")).isEqualTo("A-17");
        assertThat(record.object("dates").text("checkedInUtc")).isEqualTo("2025-06-15T15:06:40.000Z");
        assertThat(record.object("procedure").object("rest").decimal("limitVolts"))
                .isEqualTo(0.5);
        assertThat(record.text("decisionRule")).contains("V + U < limit", "k = 2", "V + U < 0.1 V", "V + U < 0.5 V");
        JsonObject calibration = record.objects("calibrations").get(0);
        assertThat(calibration.number("nanovoltsPerCount")).isEqualTo(100_000);
        assertThat(calibration.number("expandedGainPartsPerMillion")).isEqualTo(500);
        assertThat(calibration.text("identitySha256")).matches("[0-9a-f]{64}");
        assertThat(record.text("sensors")).contains("converts its temperature sensors itself");
        assertThat(record.objects("gaps")).singleElement().satisfies(gap -> {
            assertThat(gap.number("leastMillis")).isEqualTo(4_000);
            assertThat(gap.number("mostMillis")).isEqualTo(6_000);
        });
        assertThat(record.objects("journal"))
                .extracting(line -> line.text("kind"))
                .contains("Acted", "LeadChecked", "Gap", "Metered");
        assertThat(record.objects("phases")).isNotEmpty().allSatisfy(change -> assertThat(change.text("wallUtc"))
                .endsWith("Z"));
        assertThat(record.texts("cautions"))
                .anyMatch(caution -> caution.startsWith("SIMULATED at 600 times"))
                .anyMatch(caution -> caution.startsWith("1 gap(s)"))
                .anyMatch(caution -> caution.contains("typed in by a person"));
        assertThat(record.text("end")).isEqualTo("END OF RECORD " + InventedPassage.ID);
        assertThat(Bundles.text(bundle, "record.json")).endsWith("\"END OF RECORD " + InventedPassage.ID + "\"\n}\n");
    }

    @Test
    void a_passage_that_is_not_over_is_marked_so() throws IOException {
        Path open = Bundles.write(new InventedPassage("A-17", false).reads(12, 3.7, 3.7, false), folder);
        JsonObject record = JsonObject.read(Bundles.parts(open).get("record.json"));
        assertThat(record.object("outcome").truth("over")).isFalse();
        assertThat(record.truth("simulated")).isFalse();
        assertThat(record.texts("cautions"))
                .anyMatch(caution -> caution.contains("was not over"))
                .noneMatch(caution -> caution.contains("SIMULATED"));
    }

    @Test
    void a_verdict_that_was_another_when_it_was_watched_is_not_passed_over() throws IOException {
        PassageRecords records = InventedPassage.brief("A-17").records();
        var otherwise = new PassageRecords(
                records.card(),
                records.journal(),
                List.of("11000 DRAIN REST another"),
                records.chain(),
                records.intake());
        Path bundle = new BundleWriter(Origin.current(), Bundles.KEY)
                .write(otherwise, folder)
                .file();
        JsonObject record = JsonObject.read(Bundles.parts(bundle).get("record.json"));
        assertThat(record.texts("writtenDown")).containsExactly("11000 DRAIN REST another");
        assertThat(record.texts("cautions")).anyMatch(caution -> caution.contains("see writtenDown"));
        JsonObject usual =
                JsonObject.read(Bundles.parts(Bundles.write(InventedPassage.brief("A-17"), folder.resolve("usual")))
                        .get("record.json"));
        assertThat(usual.isNull("writtenDown")).isTrue();
    }

    @Test
    void readings_that_were_judged_and_are_gone_are_missed() throws IOException {
        PassageRecords records = InventedPassage.brief("A-17").records();
        var fewer = new InventedPassage("A-17", false).reads(10, 3.70, 3.71, false);
        fewer.enters(at -> new Entry.Acted(at, Act.WITHDRAW), 13);
        Path bundle = new BundleWriter(Origin.current(), Bundles.KEY)
                .write(
                        new PassageRecords(
                                records.card(),
                                fewer.records().journal(),
                                records.writtenDown(),
                                records.chain(),
                                records.intake()),
                        folder)
                .file();
        JsonObject record = JsonObject.read(Bundles.parts(bundle).get("record.json"));
        assertThat(record.texts("cautions")).anyMatch(caution -> caution.startsWith("Readings that were judged"));
    }

    @Test
    void the_parts_can_be_checked_with_any_digest_program() throws IOException {
        Map<String, byte[]> parts = Bundles.parts(Bundles.write(InventedPassage.brief("A-17"), folder));
        Manifest manifest = Manifest.read(parts.get("manifest.json"));
        assertThat(manifest.parts())
                .extracting("path")
                .containsExactly("trace.csv", "record.json", "chain.json", "report.pdf", "datapackage.json");
        assertThat(manifest.parts()).allSatisfy(part -> {
            byte[] bytes = parts.get(part.path());
            assertThat(part.bytes()).isEqualTo(bytes.length);
            assertThat(bytes).satisfies(content -> assertThat(digest(content))
                    .isEqualTo(part.sha256().toString()));
        });
    }

    private static String digest(byte[] bytes) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }

    private static List<Path> filesIn(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
