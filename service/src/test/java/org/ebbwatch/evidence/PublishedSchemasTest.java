package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.json.JsonText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Parts of a bundle against published schemas, by an independent validator: the profiles of the Frictionless Data Package (see
 * {@code datapackage/README.md} among the test resources) and this project's own schema of the record.
 */
class PublishedSchemasTest {
    private static final String RECORD_SCHEMA = "/schemas/record-1.schema.json";

    @TempDir
    Path folder;

    private Map<String, byte[]> parts;

    @BeforeEach
    void write() throws IOException {
        parts = Bundles.parts(Bundles.write(InventedPassage.whole("A-17"), folder));
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = PublishedSchemasTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static Set<ValidationMessage> faults(String schema, VersionFlag version, String json) throws IOException {
        JsonSchema itsSchema = JsonSchemaFactory.getInstance(version).getSchema(resource(schema));
        return itsSchema.validate(json, InputFormat.JSON);
    }

    private String text(String part) {
        return new String(parts.get(part), StandardCharsets.UTF_8);
    }

    private JsonObject trace() {
        return JsonObject.read(parts.get("datapackage.json"))
                .objects("resources")
                .get(0);
    }

    @Test
    void the_data_package_is_valid_by_the_published_profile() throws IOException {
        assertThat(faults("/datapackage/data-package.json", VersionFlag.V4, text("datapackage.json")))
                .isEmpty();
    }

    @Test
    void its_trace_is_valid_by_the_published_profile_of_tabular_resources() throws IOException {
        String trace = new String(JsonText.of(Map.copyOf(stringKeys(trace().map()))), StandardCharsets.UTF_8);
        assertThat(faults("/datapackage/tabular-data-resource.json", VersionFlag.V4, trace))
                .isEmpty();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> stringKeys(Map<?, ?> map) {
        return (Map<String, Object>) map;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"name\": \"passage- | \"name\": \"NOT A NAME ",
                "\"resources\": | \"things\": ",
                "\"path\": \"trace.csv\" | \"path\": 7"
            })
    void the_profile_notices_what_is_no_data_package(String old, String other) throws IOException {
        String broken = text("datapackage.json").replace(old, other);
        assertThat(broken).isNotEqualTo(text("datapackage.json"));
        assertThat(faults("/datapackage/data-package.json", VersionFlag.V4, broken))
                .isNotEmpty();
    }

    @Test
    void the_data_package_tells_length_and_digest_of_each_part_and_the_columns_of_the_trace() throws Exception {
        JsonObject dataPackage = JsonObject.read(parts.get("datapackage.json"));
        assertThat(dataPackage.objects("resources")).hasSize(4);
        for (JsonObject part : dataPackage.objects("resources")) {
            byte[] content = parts.get(part.text("path"));
            assertThat(part.number("bytes")).isEqualTo(content.length);
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
            assertThat(part.text("hash")).isEqualTo("sha256:" + HexFormat.of().formatHex(digest));
        }
        String header = text("trace.csv").lines().findFirst().orElseThrow();
        assertThat(trace().object("schema").objects("fields"))
                .extracting(field -> field.text("name"))
                .containsExactly(header.split(",", -1));
    }

    @Test
    void the_record_is_valid_by_its_own_schema() throws IOException {
        assertThat(faults(RECORD_SCHEMA, VersionFlag.V202012, text("record.json")))
                .isEmpty();
        byte[] brief = Bundles.parts(Bundles.write(InventedPassage.brief("A-18"), folder))
                .get("record.json");
        assertThat(faults(RECORD_SCHEMA, VersionFlag.V202012, new String(brief, StandardCharsets.UTF_8)))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"passage\": \"0190 | \"passage\": \"x190",
                "\"below\": true | \"below\": \"yes\"",
                "\"phase\": \"RELEASED\" | \"phase\": \"EMPTY\"",
                "\"loadOhms\": 2 | \"loadOhms\": -2",
                "\"customer\": null, | \"customer\": null, \"mood\": 1,"
            })
    void the_schema_notices_what_is_no_record(String old, String other) throws IOException {
        String broken = text("record.json").replace(old, other);
        assertThat(broken).isNotEqualTo(text("record.json"));
        assertThat(faults(RECORD_SCHEMA, VersionFlag.V202012, broken)).isNotEmpty();
    }

    @Test
    void the_schema_in_the_documents_is_the_one_in_the_program() throws IOException {
        Path document = Path.of(System.getProperty("basedir", ".")).resolve("../docs/schemas/record-1.schema.json");
        assertThat(Files.readString(document)).isEqualTo(resource(RECORD_SCHEMA));
    }
}
