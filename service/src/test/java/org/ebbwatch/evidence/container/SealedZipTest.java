package org.ebbwatch.evidence.container;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SealedZipTest {
    private static final byte[] POEM = "volts fall, volts rise\n".repeat(20).getBytes(StandardCharsets.US_ASCII);

    @TempDir
    Path folder;

    private Map<String, byte[]> parts() {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        parts.put("a.csv", POEM);
        parts.put("b.json", new byte[0]);
        parts.put("0-c.txt", new byte[] {0, 1, -1});
        return parts;
    }

    private Path file(byte[] bytes) throws IOException {
        return Forged.over(folder.resolve("read.zip"), bytes);
    }

    @Test
    void what_was_written_is_read_in_its_order() throws IOException {
        Map<String, List<Byte>> read = Forged.readAll(file(Forged.written(folder, parts())));
        assertThat(read.keySet()).containsExactly("a.csv", "b.json", "0-c.txt");
        assertThat(read).hasSameSizeAs(parts());
        parts().forEach((path, content) -> assertThat(read).containsEntry(path, Forged.list(content)));
    }

    @Test
    void any_unzip_program_reads_the_same() throws IOException {
        Path file = file(Forged.written(folder, parts()));
        try (var zip = new ZipFile(file.toFile())) {
            assertThat(Collections.list(zip.entries()))
                    .extracting(ZipEntry::getName)
                    .containsExactly("a.csv", "b.json", "0-c.txt");
            for (Map.Entry<String, byte[]> part : parts().entrySet()) {
                assertThat(zip.getInputStream(zip.getEntry(part.getKey())).readAllBytes())
                        .isEqualTo(part.getValue());
            }
            assertThat(zip.getComment()).matches("ebbwatch bundle 2, sha256 [0-9a-f]{64}");
        }
    }

    @Test
    void the_same_parts_give_the_same_bytes() {
        assertThat(Forged.written(folder, parts())).isEqualTo(Forged.written(folder, parts()));
    }

    @ParameterizedTest(name = "SHA-256 of \"{0}\"")
    @CsvSource({
        // source: the examples NIST publishes with FIPS 180-4 ("abc") and for the empty message
        "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    })
    void the_digest_of_a_part_is_its_published_one(String content, String digest) throws IOException {
        byte[] bytes = content.getBytes(StandardCharsets.US_ASCII);
        try (SealedZipWriter zip = SealedZipWriter.create(folder.resolve("d.zip"))) {
            try (OutputStream out = zip.part("d.txt")) {
                out.write(bytes);
            }
            assertThat(zip.parts()).hasSize(1);
            assertThat(zip.parts().get(0).sha256()).hasToString(digest);
            zip.seal();
        }
        try (SealedZipReader zip = SealedZipReader.open(folder.resolve("d.zip"))) {
            assertThat(zip.digest("d.txt").sha256()).hasToString(digest);
            assertThat(zip.digest("d.txt").bytes()).isEqualTo(bytes.length);
        }
    }

    @Nested
    class Damage {

        @ParameterizedTest
        @ValueSource(ints = {0x01, 0x20, 0x80, 0xFF})
        void no_changed_byte_anywhere_goes_unnoticed(int mask) throws IOException {
            byte[] good = Forged.written(folder, parts());
            for (int at = 0; at < good.length; at++) {
                byte[] bad = good.clone();
                bad[at] ^= (byte) mask;
                Path file = file(bad);
                assertThatThrownBy(() -> Forged.readAll(file))
                        .as("byte %d of %d", at, good.length)
                        .isInstanceOf(DamageException.class);
            }
        }

        @ParameterizedTest
        @ValueSource(ints = {0x01, 0x20, 0x80, 0xFF})
        void not_even_with_a_new_seal_unless_every_part_is_what_it_was(int mask) throws IOException {
            byte[] good = Forged.written(folder, parts());
            Map<String, List<Byte>> before = Forged.readAll(file(good));
            int unnoticed = 0;
            for (int at = 0; at < good.length - Seal.DIGITS; at++) {
                byte[] bad = good.clone();
                bad[at] ^= (byte) mask;
                Path file = file(Forged.resealed(bad));
                try {
                    assertThat(Forged.readAll(file)).as("byte %d", at).isEqualTo(before);
                    unnoticed++;
                } catch (DamageException | NoBundleException e) {
                    assertThat(e).hasMessageNotContaining("null");
                }
            }
            // only the bits that fill up the last byte of a packed part, at most one byte of each
            assertThat(unnoticed).isLessThanOrEqualTo(parts().size());
        }

        @Test
        void a_file_cut_short_anywhere_is_refused() throws IOException {
            byte[] good = Forged.written(folder, parts());
            for (int length = 0; length < good.length; length++) {
                Path file = file(Arrays.copyOf(good, length));
                assertThatThrownBy(() -> Forged.readAll(file))
                        .as("the first %d bytes", length)
                        .isInstanceOfAny(DamageException.class, NoBundleException.class);
            }
        }

        @Test
        void a_byte_before_or_behind_is_refused() throws IOException {
            byte[] good = Forged.written(folder, parts());
            byte[] behind = Arrays.copyOf(good, good.length + 1);
            byte[] before = new byte[good.length + 1];
            System.arraycopy(good, 0, before, 1, good.length);
            for (byte[] bad : List.of(behind, before, Forged.resealed(before))) {
                Path file = file(bad);
                assertThatThrownBy(() -> Forged.readAll(file)).isInstanceOf(DamageException.class);
            }
        }
    }

    @Nested
    class Forgery {

        private void isRefused(byte[] container, String why) throws IOException {
            Path file = file(container);
            assertThatThrownBy(() -> Forged.readAll(file))
                    .isInstanceOf(DamageException.class)
                    .hasMessageContaining(why);
        }

        @Test
        void what_is_laid_out_as_by_the_writer_is_taken() throws IOException {
            assertThat(Forged.readAll(file(new Forged().part("a.csv", POEM).sealed())))
                    .containsEntry("a.csv", Forged.list(POEM));
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "../a.csv",
                    "/a.csv",
                    "a/b.csv",
                    "..",
                    ".a",
                    "-a",
                    "A.csv",
                    "a b",
                    "a\\b",
                    "c:a",
                    "a\u00FC",
                    ""
                })
        void a_name_that_could_lead_elsewhere_is_refused(String name) throws IOException {
            isRefused(new Forged().part(name, POEM).sealed(), "a name in it");
        }

        @Test
        void a_name_longer_than_64_is_refused() throws IOException {
            isRefused(new Forged().part("a".repeat(65), POEM).sealed(), "a name in it is too long");
            assertThat(Forged.readAll(
                            file(new Forged().part("a".repeat(64), POEM).sealed())))
                    .hasSize(1);
        }

        @Test
        void the_same_name_twice_is_refused() throws IOException {
            isRefused(
                    new Forged().part("a.csv", POEM).part("a.csv", new byte[3]).sealed(), "a.csv twice");
        }

        @Test
        void bytes_between_the_parts_are_refused() throws IOException {
            isRefused(
                    new Forged()
                            .part("a.csv", POEM)
                            .bytes(new byte[1])
                            .part("b.csv", POEM)
                            .sealed(),
                    "between its parts");
            isRefused(new Forged().part("a.csv", POEM).bytes(POEM).sealed(), "between its parts and the directory");
        }

        @Test
        void two_parts_over_the_same_bytes_are_refused() throws IOException {
            byte[] packed = Forged.deflate(POEM);
            var header = new PartHeader("a.csv", Forged.crc(POEM), packed.length, POEM.length, 0);
            var again = new PartHeader("b.csv", header.crc(), packed.length, POEM.length, 0);
            byte[] container =
                    new Forged().part(header, packed).part(again, new byte[0]).sealed();
            isRefused(container, "between its parts");
        }

        @ParameterizedTest
        @ValueSource(ints = {0, 1, 3, 17, 65_535})
        void a_directory_that_counts_otherwise_is_refused(int counted) throws IOException {
            isRefused(
                    new Forged()
                            .part("a.csv", POEM)
                            .part("b.csv", POEM)
                            .counting(counted)
                            .sealed(),
                    "directory");
        }

        @Test
        void more_than_sixteen_parts_are_refused() throws IOException {
            var many = new Forged();
            for (int i = 0; i < 17; i++) {
                many.part("p" + i, POEM);
            }
            isRefused(many.sealed(), "directory");
        }

        @Test
        void a_header_that_says_another_thing_than_the_directory_is_refused() throws IOException {
            byte[] container =
                    new Forged().part("a.csv", POEM).part("b.csv", POEM).sealed();
            container[30] = 'x';
            isRefused(Forged.resealed(container), "one thing of a.csv");
        }

        @Test
        void a_part_that_unpacks_to_more_than_it_says_is_stopped_there() throws IOException {
            byte[] bomb = Forged.deflate(new byte[64 << 20]);
            byte[] container = new Forged()
                    .part(new PartHeader("a.csv", 0, bomb.length, 1_000, 0), bomb)
                    .sealed();
            try (SealedZipReader zip = SealedZipReader.open(file(container));
                    var in = zip.part("a.csv")) {
                byte[] buffer = new byte[4096];
                assertThatThrownBy(() -> in.read(buffer))
                        .isInstanceOf(DamageException.class)
                        .hasMessageContaining("longer than it is said to be");
            }
        }

        @Test
        void parts_that_would_unpack_to_4_gib_are_refused_before_they_are_unpacked() throws IOException {
            byte[] packed = Forged.deflate(POEM);
            var forged = new Forged().part(new PartHeader("a.csv", 0, packed.length, 0x8000_0000L, 0), packed);
            forged.part(new PartHeader("b.csv", 0, packed.length, 0x8000_0000L, forged.size()), packed);
            isRefused(forged.sealed(), "4 GiB");
        }

        @Test
        void something_hidden_behind_a_packed_part_is_found() throws IOException {
            byte[] packed = Arrays.copyOf(Forged.deflate(POEM), Forged.deflate(POEM).length + 5);
            isRefused(
                    new Forged()
                            .part(new PartHeader("a.csv", Forged.crc(POEM), packed.length, POEM.length, 0), packed)
                            .sealed(),
                    "something else lies behind it");
        }
    }

    @Nested
    class Other_files {

        private void isNoBundle(byte[] bytes, String why) throws IOException {
            Path file = file(bytes);
            assertThatThrownBy(() -> SealedZipReader.open(file))
                    .isInstanceOf(NoBundleException.class)
                    .hasMessageContaining(why);
        }

        @Test
        void are_told_from_damaged_bundles() throws IOException {
            isNoBundle(new byte[0], "no bundle");
            isNoBundle("a letter ".repeat(50).getBytes(StandardCharsets.US_ASCII), "no bundle");
        }

        @Test
        void such_as_a_bundle_that_was_packed_again() throws IOException {
            Path file = folder.resolve("again.zip");
            try (var zip = new ZipOutputStream(Files.newOutputStream(file))) {
                zip.putNextEntry(new ZipEntry("a.csv"));
                zip.write(POEM);
            }
            isNoBundle(Files.readAllBytes(file), "ordinary ZIP");
        }

        @Test
        void such_as_a_bundle_of_a_later_format() throws IOException {
            byte[] later = Forged.written(folder, parts());
            later[later.length - Seal.BYTES + "ebbwatch bundle ".length()] = '3';
            isNoBundle(Forged.resealed(later), "version 3");
        }
    }

    @Test
    void the_writer_takes_no_name_that_the_reader_refuses() throws IOException {
        try (SealedZipWriter zip = SealedZipWriter.create(folder.resolve("n.zip"))) {
            for (String name : List.of("../a", "A", "", "a".repeat(65))) {
                assertThatThrownBy(() -> zip.part(name)).isInstanceOf(IllegalStateException.class);
            }
            zip.part("a").close();
            assertThatThrownBy(() -> zip.part("a")).isInstanceOf(IllegalStateException.class);
            try (OutputStream open = zip.part("b")) {
                assertThat(open).isNotNull();
                assertThatThrownBy(() -> zip.part("c")).isInstanceOf(IllegalStateException.class);
                assertThatThrownBy(zip::seal).isInstanceOf(IllegalStateException.class);
            }
        }
    }
}
