package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.evidence.Verification.Damaged;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.passage.PassageChain;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bundles in which parts were exchanged, the signature is another's, or the chain is broken, with every hash made to fit. */
class BundleForgeryTest {

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

    @Nested
    class Signature {

        @Test
        void names_the_key_that_signed() {
            assertThat(judged(bundle).signer()).contains(Bundles.KEY.signer());
        }

        @Test
        void by_a_foreign_key_names_that_one() throws IOException {
            SigningKey foreign = SigningKey.fresh();
            Path file = Bundles.putSigned(Bundles.parts(bundle), foreign, folder.resolve("foreign.zip"));
            assertThat(judged(file).signer())
                    .contains(foreign.signer())
                    .isNotEqualTo(Optional.of(Bundles.KEY.signer()));
        }

        @Test
        void of_another_manifest_is_none_of_this_one() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            Path other = Bundles.write(InventedPassage.whole("A-18"), folder);
            parts.put("signature.json", Bundles.parts(other).get("signature.json"));
            isDamaged(
                    Bundles.put(parts, folder.resolve("bad.zip")),
                    "signature.json",
                    "no signature of this manifest by the key");
        }

        @Test
        void that_claims_a_key_which_did_not_sign_is_none() throws IOException {
            Map<String, byte[]> parts = Bundles.parts(
                    Bundles.putSigned(Bundles.parts(bundle), SigningKey.fresh(), folder.resolve("foreign.zip")));
            SignaturePart foreign = SignaturePart.read(parts.get("signature.json"));
            parts.put("signature.json", new SignaturePart(Bundles.KEY.signer(), foreign.signature()).text());
            isDamaged(
                    Bundles.put(parts, folder.resolve("bad.zip")),
                    "signature.json",
                    "no signature of this manifest by the key");
        }

        @Test
        void must_lie_behind_the_manifest() throws IOException {
            Map<String, byte[]> turned = new LinkedHashMap<>();
            turned.put("signature.json", Bundles.parts(bundle).get("signature.json"));
            turned.putAll(Bundles.parts(bundle));
            isDamaged(Bundles.put(turned, folder.resolve("bad.zip")), "signature.json", "does not lie");
        }
    }

    @Nested
    class Parts_of_another_bundle {

        @ParameterizedTest
        @ValueSource(strings = {"trace.csv", "record.json", "chain.json", "report.pdf", "datapackage.json"})
        void are_noticed_wherever_they_are_put(String part) throws IOException {
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.put(
                    part,
                    Bundles.parts(Bundles.write(InventedPassage.brief("A-18"), folder))
                            .get(part));
            isDamaged(Bundles.put(parts, folder.resolve("bad.zip")), part, "manifest");
        }
    }

    @Nested
    class Chain {

        @Test
        void that_is_broken_is_found_whatever_else_fits() throws IOException {
            String chain = Bundles.text(bundle, "chain.json");
            String second = chain.substring(chain.lastIndexOf("\"previous\": \"") + 13);
            String previous = second.substring(0, 64);
            isDamaged(
                    Bundles.edited(
                            bundle, "chain.json", "\"previous\": \"" + previous, "\"previous\": \"" + "0".repeat(64)),
                    "chain.json",
                    "the chain is broken on channel 0 of board bench");
        }

        @Test
        void with_a_link_left_out_is_broken() throws IOException {
            PassageRecords records = InventedPassage.whole("A-17").records();
            var stay = records.chain().stays().get(0);
            List<PassageChain.Link> fewer = new ArrayList<>(stay.links());
            fewer.remove(2);
            var broken = new PassageChain(
                    List.of(new PassageChain.Stay("bench", 0, stay.fromMillis(), stay.toMillis(), fewer)));
            Path file = new BundleWriter(Origin.current(), Bundles.KEY)
                    .write(
                            new PassageRecords(
                                    records.card(), records.journal(), records.writtenDown(), broken, records.intake()),
                            folder.resolve("broken"))
                    .file();
            isDamaged(file, "chain.json", "the chain is broken");
            assertThat(Bundles.text(file, "record.json")).contains("the chain is broken on channel 0 of board bench");
        }

        @Test
        void misses_a_row_that_was_taken_out_though_everything_was_numbered_anew() throws IOException {
            String trace = Bundles.text(bundle, "trace.csv");
            List<String> lines = new ArrayList<>(trace.lines().toList());
            lines.remove(3);
            var renumbered = new StringBuilder(lines.get(0)).append("\r\n");
            for (int i = 1; i < lines.size(); i++) {
                String line = lines.get(i);
                long sequence = Long.parseLong(line.substring(0, line.indexOf(',')));
                renumbered
                        .append(sequence > 3 ? sequence - 1 : sequence)
                        .append(line.substring(line.indexOf(',')))
                        .append("\r\n");
            }
            Map<String, byte[]> parts = Bundles.parts(bundle);
            parts.put("trace.csv", renumbered.toString().getBytes(StandardCharsets.US_ASCII));
            String record = new String(parts.get("record.json"), StandardCharsets.UTF_8);
            int journal = record.indexOf("\"journal\": [");
            String later = Pattern.compile("\"sequence\": (\\d+)")
                    .matcher(record.substring(journal))
                    .replaceAll(found -> "\"sequence\": " + (Long.parseLong(found.group(1)) - 1));
            parts.put("record.json", (record.substring(0, journal) + later).getBytes(StandardCharsets.UTF_8));
            isDamaged(
                    Bundles.putWithManifest(parts, folder.resolve("fewer.zip")),
                    "trace.csv",
                    "it has 59 readings between event times 1000 and 60000, the segment sealed there has 60");
        }

        @Test
        void of_another_passage_is_none_of_this_one() throws IOException {
            isDamaged(
                    Bundles.edited(bundle, "chain.json", "8000-0123456789ab", "8000-0123456789ac"),
                    "chain.json",
                    "chain of another passage");
        }
    }
}
