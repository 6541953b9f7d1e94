package org.ebbwatch.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.StoredRack;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportTest {
    @TempDir
    Path folder;

    private Path exported;

    @BeforeEach
    void export() throws IOException {
        try (var rack = new WorkingRack(folder.resolve("records"))) {
            UUID one = rack.checkIn(0, "=A-17,\"x\"");
            rack.seconds(700, 40_000);
            rack.act(one, Act.WITHDRAW);
        }
        exported = folder.resolve("exported");
        write();
    }

    private int write() throws IOException {
        try (StoredRack rack = StoredRack.open(folder.resolve("records"))) {
            return Export.write(
                    rack, new BundleWriter(Origin.current(), SigningKey.fresh()), exported, "2026-11-25T21:00:00Z");
        }
    }

    private JsonObject dataPackage() throws IOException {
        return JsonObject.read(Files.readAllBytes(exported.resolve("datapackage.json")));
    }

    @Test
    void everything_is_one_data_package_by_the_published_profile() throws IOException {
        String schema = Files.readString(Path.of(System.getProperty("basedir", "."))
                .resolve("src/test/resources/datapackage/data-package.json"));
        String json = Files.readString(exported.resolve("datapackage.json"));
        assertThat(JsonSchemaFactory.getInstance(VersionFlag.V4)
                        .getSchema(schema)
                        .validate(json, InputFormat.JSON))
                .isEmpty();
        for (JsonObject resource : dataPackage().objects("resources")) {
            assertThat(Files.size(exported.resolve(resource.text("path")))).isEqualTo(resource.number("bytes"));
        }
    }

    @Test
    void every_table_has_the_columns_its_schema_names_and_a_tag_cannot_calculate() throws IOException {
        for (JsonObject resource : dataPackage().objects("resources")) {
            if (!resource.text("format").equals("csv")) {
                continue;
            }
            CSVFormat format = CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            try (var parser =
                    CSVParser.parse(exported.resolve(resource.text("path")), StandardCharsets.UTF_8, format)) {
                List<String> names = resource.object("schema").objects("fields").stream()
                        .map(field -> field.text("name"))
                        .toList();
                assertThat(parser.getHeaderNames()).isEqualTo(names);
                List<CSVRecord> rows = parser.getRecords();
                assertThat(rows).allMatch(CSVRecord::isConsistent);
                if (resource.text("name").equals("passage")) {
                    assertThat(rows).singleElement().satisfies(row -> assertThat(row.get("tag"))
                            .isEqualTo("'=A-17,\"x\""));
                }
            }
        }
    }

    @Test
    void the_bundle_of_every_passage_is_in_it_and_verifies() throws IOException {
        List<JsonObject> bundles = dataPackage().objects("resources").stream()
                .filter(resource -> resource.text("format").equals("zip"))
                .toList();
        assertThat(bundles).singleElement().satisfies(bundle -> assertThat(
                        BundleVerifier.verify(exported.resolve(bundle.text("path"))))
                .isInstanceOf(Judged.class));
    }

    @Test
    void an_export_that_is_there_is_left_as_it_is() {
        assertThatThrownBy(this::write).hasMessageContaining("holds a Data Package already");
    }
}
