package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Damaged;
import org.ebbwatch.evidence.Verification.Harm;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.Verification.Unreadable;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.evidence.container.Forged;
import org.ebbwatch.judge.JudgeVersion;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BundleVerifierTest {

    @TempDir
    Path folder;

    private Path bundle;

    @BeforeEach
    void write() throws IOException {
        bundle = Bundles.write(InventedPassage.whole("A-17"), folder);
    }

    private static Judged judged(Path file) {
        Verification verification = BundleVerifier.verify(file);
        assertThat(verification).isInstanceOf(Judged.class);
        return (Judged) verification;
    }

    private static void isDamaged(Path file, String part, String why) {
        assertThat(BundleVerifier.verify(file))
                .isInstanceOfSatisfying(
                        Damaged.class, damaged -> assertThat(damaged.harms()).anySatisfy(harm -> {
                            assertThat(harm.part()).isEqualTo(part);
                            assertThat(harm.why()).contains(why);
                        }));
    }

    @Test
    void an_intact_bundle_is_judged_again_the_same() throws IOException {
        Judged judged = judged(bundle);
        assertThat(judged.again()).isEqualTo(new Again.Same());
        assertThat(judged.isSameJudge()).isTrue();
        assertThat(judged.account().tag()).isEqualTo("A-17");
        assertThat(judged.account().simulatedSpeed()).isEqualTo(600);
        assertThat(judged.account().readings())
                .isEqualTo(InventedPassage.whole("A-17").scans().size());
        assertThat(judged.account().firstUtc()).contains("2025-06-15T15:06:40.001Z");
        assertThat(judged.account().bytes()).isEqualTo(Files.size(bundle));
    }

    @Test
    void so_is_one_of_a_passage_that_is_not_over_and_one_without_a_reading() throws IOException {
        for (InventedPassage passage : List.of(
                new InventedPassage("open", false).reads(12, 3.7, 3.7, false), new InventedPassage("empty", false))) {
            assertThat(judged(Bundles.write(passage, folder)).again()).isEqualTo(new Again.Same());
        }
    }

    @Nested
    class Damage {

        @ParameterizedTest
        @ValueSource(ints = {0x01, 0x10, 0x80})
        void no_changed_byte_of_the_file_goes_unnoticed(int mask) throws IOException {
            Path brief = Bundles.write(InventedPassage.brief("A-18"), folder);
            byte[] good = Files.readAllBytes(brief);
            int closely = good.length - 1_200;
            for (int at = mask % 16; at < good.length; at += at < closely ? good.length / 200 : 3) {
                byte[] bad = good.clone();
                bad[at] ^= (byte) mask;
                assertThat(BundleVerifier.verify(Forged.over(folder.resolve("bad.zip"), bad)))
                        .as("byte %d of %d", at, good.length)
                        .isInstanceOf(Damaged.class);
            }
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "trace.csv",
                    "record.json",
                    "chain.json",
                    "report.pdf",
                    "datapackage.json",
                    "manifest.json",
                    "signature.json"
                })
        void no_changed_byte_of_a_part_goes_unnoticed_under_a_seal_that_fits(String part) throws IOException {
            Path brief = Bundles.write(InventedPassage.brief("A-18"), folder);
            Map<String, byte[]> parts = Bundles.parts(brief);
            byte[] good = parts.get(part);
            int stride = Math.max(1, good.length / 150);
            for (int at = 0; at < good.length; at += stride) {
                byte[] bad = good.clone();
                bad[at] ^= 0x01;
                parts.put(part, bad);
                Path file = Bundles.put(parts, folder.resolve("bad.zip"));
                assertThat(BundleVerifier.verify(file))
                        .as("byte %d of %s", at, part)
                        .isInstanceOf(Damaged.class);
            }
        }

        @ParameterizedTest
        @ValueSource(strings = {"trace.csv", "record.json"})
        void the_damaged_part_is_named(String part) throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.get(part)[parts.get(part).length / 2] ^= 0x01;
            Verification verification = BundleVerifier.verify(Bundles.put(parts, folder.resolve("bad.zip")));
            assertThat(verification)
                    .isEqualTo(new Damaged(List.of(new Harm(part, "its SHA-256 is not the one in the manifest"))));
        }

        @Test
        void a_part_cut_short_is_named_with_both_lengths() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            byte[] trace = parts.get("trace.csv");
            parts.put("trace.csv", Arrays.copyOf(trace, 100));
            isDamaged(
                    Bundles.put(parts, folder.resolve("bad.zip")),
                    "trace.csv",
                    "100 bytes, the manifest says " + trace.length);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "trace.csv",
                    "record.json",
                    "chain.json",
                    "report.pdf",
                    "datapackage.json",
                    "manifest.json",
                    "signature.json"
                })
        void a_missing_part_is_named(String part) throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.remove(part);
            isDamaged(Bundles.put(parts, folder.resolve("bad.zip")), part, "missing");
        }

        @Test
        void a_part_the_manifest_does_not_list_is_named() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.put("extra.txt", new byte[1]);
            isDamaged(Bundles.put(parts, folder.resolve("bad.zip")), "extra.txt", "does not list it");
        }

        @Test
        void parts_in_another_order_are_not_what_was_sealed() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            Map<String, byte[]> turned = new LinkedHashMap<>();
            turned.put("record.json", parts.get("record.json"));
            turned.putAll(parts);
            isDamaged(Bundles.put(turned, folder.resolve("bad.zip")), "manifest.json", "not written as");
        }

        @Test
        void a_bundle_cut_short_is_refused() throws IOException {
            byte[] good = Files.readAllBytes(bundle);
            for (int length : new int[] {good.length - 1, good.length / 2, 200, 4}) {
                isDamaged(
                        Forged.over(folder.resolve("bad.zip"), Arrays.copyOf(good, length)),
                        DamageException.CONTAINER,
                        "does not end with a seal");
            }
        }

        @Test
        void a_record_too_large_to_be_one_is_not_taken_into_memory() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.put("record.json", new byte[(64 << 20) + 1]);
            isDamaged(
                    Bundles.putWithManifest(parts, folder.resolve("bad.zip")),
                    "record.json",
                    "more than the 67108864 bytes");
        }
    }

    @Nested
    class Forgery_with_hashes_that_fit {

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                quoteCharacter = '`',
                value = {
                    "below the rested limit | all is well",
                    "\"reason\": \"load put on\" | \"reason\": \"load put on twice\"",
                    "\"ampereHours\": 0 | \"ampereHours\": 1",
                    "\"act\": \"RELEASE\" | \"act\": \"WITHDRAW\"",
                    "\"loadOhms\": 2, | \"loadOhms\": 3,",
                    "\"holdMillis\": 60000 | \"holdMillis\": 600000",
                    "\"limitVolts\": 0.1, | \"limitVolts\": 0.001,",
                    "\"phase\": \"RELEASED\" | \"phase\": \"HELD\"",
                    "\"highestCelsius\": 21 | \"highestCelsius\": 20",
                    "\"kind\": \"SILENT\" | \"kind\": \"STALLED\"",
                })
        void a_record_that_does_not_follow_from_its_readings_is_judged_otherwise(String old, String other)
                throws IOException {
            Judged judged = judged(Bundles.edited(bundle, "record.json", old, other));
            assertThat(judged.isSameJudge()).isTrue();
            assertThat(judged.again()).isInstanceOf(Again.Different.class);
        }

        @Test
        void so_is_a_trace_in_which_one_voltage_is_another() throws IOException {
            List<String> lines = Bundles.text(bundle, "trace.csv").lines().toList();
            String drained = lines.get(40);
            String other = drained.replaceFirst("^((?:[^,]*,){3})[^,]*", "$10.0004");
            assertThat(other).isNotEqualTo(drained);
            Judged judged = judged(Bundles.edited(bundle, "trace.csv", drained, other));
            assertThat(judged.again())
                    .asInstanceOf(InstanceOfAssertFactories.type(Again.Different.class))
                    .satisfies(different -> assertThat(different.first()).contains("the record has"));
        }

        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                quoteCharacter = '`',
                value = {
                    "record.json | \"kind\": \"Gap\" | \"kind\": \"Gossip\" | knows no entry Gossip",
                    "record.json | \"chemistry\": \"LAYERED_OXIDE\" | \"chemistry\": \"COAL\" | chemistry cannot be COAL",
                    "record.json | \"format\": \"ebbwatch record\" | \"format\": \"ebb\" | no record of version 1",
                    "record.json | END OF RECORD | END OF | does not end as a record does",
                    "record.json | \"phases\": | \"stages\": | lacks phases",
                    "record.json | 8000-0123456789ab | 8000-0123456789ac | manifest of another passage",
                    "trace.csv | ,false,NONE | ,false,SOME | line 2 holds",
                    "trace.csv | 1,1000,2025 | 7,1000,2025 | sequence number 1",
                    "trace.csv | 2,2000,2025 | 2,500,2025 | event time fell",
                })
        void what_cannot_be_judged_is_named(String part, String old, String other, String why) throws IOException {
            Verification verification = BundleVerifier.verify(Bundles.edited(bundle, part, old, other));
            assertThat(verification).isInstanceOfSatisfying(Damaged.class, damaged -> assertThat(damaged.harms())
                    .singleElement()
                    .satisfies(harm -> assertThat(harm.why()).contains(why)));
        }

        @Test
        void a_trace_with_a_row_left_out_is_no_journal() throws IOException {
            String row = Bundles.text(bundle, "trace.csv")
                            .lines()
                            .skip(40)
                            .findFirst()
                            .orElseThrow() + "\r\n";
            isDamaged(Bundles.edited(bundle, "trace.csv", row, ""), "trace.csv", "sequence number");
        }

        @Test
        void a_journal_with_an_entry_left_out_is_no_journal() throws IOException {
            String record = Bundles.text(bundle, "record.json");
            int begin = record.indexOf("    {\n      \"sequence\"", record.indexOf("\"journal\": ["));
            String first = record.substring(begin, record.indexOf("\n    },\n", begin) + "\n    },\n".length());
            isDamaged(Bundles.edited(bundle, "record.json", first, ""), "trace.csv", "sequence number 16");
        }
    }

    @Nested
    class Another_judge {
        private final Origin later = new Origin("ebbwatch 9.9.9", JudgeVersion.NUMBER + 1);

        @Test
        void is_told_apart_though_it_makes_the_same_verdict() throws IOException {
            Judged judged = judged(Bundles.write(InventedPassage.whole("A-19"), later, folder));
            assertThat(judged.isSameJudge()).isFalse();
            assertThat(judged.byVersion()).isEqualTo(JudgeVersion.NUMBER);
            assertThat(judged.account().judgeVersion()).isEqualTo(JudgeVersion.NUMBER + 1);
            assertThat(judged.again()).isEqualTo(new Again.Same());
        }

        @Test
        void may_have_made_another_verdict() throws IOException {
            Path other = Bundles.write(InventedPassage.whole("A-19"), later, folder);
            assertThat(judged(Bundles.edited(other, "record.json", "\"reason\": \"load put on\"", "\"reason\": \"on\""))
                            .again())
                    .isEqualTo(new Again.Different(
                            "phase change 1 is Change[sequence=16, eventMillis=15000, from=CHECK_IN, to=DRAIN,"
                                    + " reason=load put on], the record has Change[sequence=16, eventMillis=15000,"
                                    + " from=CHECK_IN, to=DRAIN, reason=on]"));
        }

        @Test
        void may_know_entries_that_this_one_does_not() throws IOException {
            Path other = Bundles.write(InventedPassage.whole("A-19"), later, folder);
            Judged judged = judged(Bundles.edited(other, "record.json", "\"kind\": \"Gap\"", "\"kind\": \"Gossip\""));
            assertThat(judged.again())
                    .isInstanceOfSatisfying(Again.Impossible.class, impossible -> assertThat(impossible.why())
                            .contains("knows no entry Gossip"));
            assertThat(judged.account().tag()).isEqualTo("A-19");
        }

        @Test
        void is_of_no_account_where_the_bundle_is_damaged() throws IOException {
            Path other = Bundles.write(InventedPassage.whole("A-19"), later, folder);
            Map<String, byte[]> parts = Bundles.parts(other);
            parts.get("trace.csv")[500] ^= 0x01;
            isDamaged(Bundles.put(parts, folder.resolve("bad.zip")), "trace.csv", "SHA-256");
        }
    }

    @Nested
    class Files_that_are_no_bundles {

        @Test
        void cannot_be_read() throws IOException {
            Path letter = Files.write(folder.resolve("letter.txt"), "Dear all".getBytes(StandardCharsets.US_ASCII));
            for (Path file : List.of(letter, folder, folder.resolve("nowhere.zip"))) {
                assertThat(BundleVerifier.verify(file)).as(file.toString()).isInstanceOf(Unreadable.class);
            }
        }
    }
}
