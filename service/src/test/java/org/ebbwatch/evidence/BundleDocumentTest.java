package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The document of the format names everything that is in a bundle. */
class BundleDocumentTest {

    @TempDir
    Path folder;

    private String document;

    @BeforeEach
    void read() throws IOException {
        document = Files.readString(Path.of(System.getProperty("basedir", ".")).resolve("../docs/bundle.md"));
    }

    private void names(String key) {
        assertThat(document).as("docs/bundle.md names %s", key).contains('`' + key + '`');
    }

    @Test
    void every_column_of_the_trace_in_its_order() {
        String section = document.replaceFirst("(?s).*\n## trace\\.csv\n", "").replaceFirst("(?s)\n## .*", "");
        assertThat(section.lines().filter(line -> line.startsWith("| `")).map(line -> line.split("`", -1)[1]))
                .containsExactlyElementsOf(TraceCsv.COLUMNS);
        for (Suspicion suspicion : Suspicion.values()) {
            names(suspicion.name());
        }
    }

    @Test
    void every_key_of_record_chain_manifest_and_signature_but_those_of_the_procedure() throws IOException {
        Map<String, byte[]> parts = Bundles.parts(Bundles.write(InventedPassage.whole("A-17"), folder));
        List<String> keys = new ArrayList<>();
        keys(JsonObject.read(parts.get("record.json")).map(), keys);
        keys(JsonObject.read(parts.get("manifest.json")).map(), keys);
        keys(JsonObject.read(parts.get("chain.json")).map(), keys);
        keys(JsonObject.read(parts.get("signature.json")).map(), keys);
        parts.keySet().forEach(this::names);
        assertThat(keys).hasSizeGreaterThan(100);
        keys.forEach(this::names);
    }

    private static void keys(Map<?, ?> map, List<String> into) {
        map.forEach((key, value) -> {
            into.add(key.toString());
            if (value instanceof Map<?, ?> inner && !key.equals("procedure")) {
                keys(inner, into);
            } else if (value instanceof List<?> list) {
                list.stream().filter(Map.class::isInstance).forEach(inner -> keys((Map<?, ?>) inner, into));
            }
        });
    }

    @Test
    void every_kind_of_entry_with_what_it_holds() {
        for (Class<?> kind : Entry.class.getPermittedSubclasses()) {
            if (kind != Entry.Scan.class) {
                names(kind.getSimpleName());
                for (var component : kind.getRecordComponents()) {
                    names(component.getName());
                }
            }
        }
    }

    @Test
    void the_seal() throws IOException {
        Path bundle = Bundles.write(InventedPassage.brief("A-17"), folder);
        byte[] bytes = Files.readAllBytes(bundle);
        String end = new String(bytes, bytes.length - 90, 26, StandardCharsets.US_ASCII);
        names(end);
        names("END OF RECORD ");
    }
}
