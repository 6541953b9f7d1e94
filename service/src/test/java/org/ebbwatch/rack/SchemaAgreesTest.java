package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * The schema that editors complete a rack file by, and the reader that takes it: every key of the schema is tried in a file that has
 * it, with what the schema allows and what it forbids, and both must agree. JSON is YAML, so that one text serves both.
 */
class SchemaAgreesTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonNode SCHEMA = schemaNode();
    private static final JsonSchema VALIDATOR =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(SCHEMA);

    private static JsonNode schemaNode() {
        try (InputStream schema = SchemaAgreesTest.class.getResourceAsStream("/schema/rack.schema.json")) {
            return MAPPER.readTree(schema);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Files that together have every key there is. */
    private static List<ObjectNode> files() {
        return Stream.of(
                        """
                        {storage: kept, procedure: strict,
                         database: {url: "jdbc:postgresql://db.example/rack?ssl=true", user: u, passwordFile: p},
                         http: {address: 127.0.0.1, port: 9000, names: [rack.example]},
                         alarms: {night: {from: "22:00", to: "07:00"}, publicAddress: "https://rack.example", outlets: [
                           {name: Anna, from: ringing, escalateAfterMinutes: 15, hours: {from: "08:00", to: "20:00"},
                            webhook: {url: "https://a.example/x", method: PUT, body: '{"a": 1}', bodyType: application/json,
                              timeoutSeconds: 5, certificates: ca.pem, signingSecretFile: secret,
                              headers: [{name: X-One, value: one}, {name: X-Two, valueEnvironment: TWO},
                                        {name: X-Three, valueFile: three}]}},
                           {name: b, webhook: {urlEnvironment: HOOK, signingSecretEnvironment: SECRET}},
                           {name: c, webhook: {urlFile: hook}},
                           {name: d, mail: {host: mail.example, port: 25, security: none, user: u, passwordFile: p,
                              from: a@b.example, to: c@d.example, timeoutSeconds: 9, certificates: ca.pem}},
                           {name: e, mail: {host: mail.example, user: u, passwordEnvironment: P, from: a@b.example,
                              to: c@d.example}},
                           {name: f, mqtt: {host: broker.example, port: 1883, security: tls, user: u, passwordFile: p,
                              clientId: c, prefix: shed/rack, sessionMinutes: 5, channelSeconds: 5, certificates: ca.pem}},
                           {name: f2, mqtt: {host: broker.example, user: u, passwordEnvironment: P}},
                           {name: g, buzzer: {seconds: 30}}]},
                         morningReport: {at: "07:00", outlets: [Anna]},
                         signOfLife: {url: "https://life.example", method: POST, everyMinutes: 5},
                         boards: [{name: left, port: /dev/serial/by-id/x, baud: 9600, serialNumber: EB-1,
                            profile: board.yaml, ambientChannel: 60, dummyChannel: 61, watchChannels: [58, 59],
                            contacts: [{input: 0, means: smoke, normally: closed}]}],
                         cells: [{board: left, channel: 1, tag: A, chemistry: nmc, ratedAmpereHours: 2.6, string: P1,
                            loadOhms: 100, loadTolerancePercent: 5, loadWatts: 500, switched: true, procedure: careful},
                           {board: left, channel: 2, tag: B, chemistry: nmc, ratedAmpereHours: 2.6, string: P1,
                            loadOhms: 100, loadTolerancePercent: 5, loadWatts: 500, switched: true, procedure: careful},
                           {board: left, channel: 3, tag: C, chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 100,
                            loadSensorChannel: 57, leadOhms: 0.1, switched: false},
                           {board: left, channel: 4, tag: D, chemistry: nmc, ratedAmpereHours: 2.6, loadOhms: 100,
                            leadMetres: 1, leadSquareMillimetres: 0.5, switched: false}]}
                        """,
                        """
                        {boards: [{name: left, port: "tcp:bench.example:4000"}],
                         database: {url: "jdbc:postgresql://db.example/rack", user: u, passwordEnvironment: P},
                         signOfLife: {urlEnvironment: LIFE}}
                        """)
                .map(SchemaAgreesTest::tree)
                .toList();
    }

    private static ObjectNode tree(String yaml) {
        Object loaded = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        return MAPPER.valueToTree(loaded);
    }

    private static boolean schemaTakes(JsonNode file) {
        return VALIDATOR.validate(file).isEmpty();
    }

    private static boolean readerTakes(JsonNode file) {
        try {
            RackFile.parse(file.toString(), "rack.yaml", Path.of("/srv"));
            return true;
        } catch (RackFileFaulty e) {
            return false;
        }
    }

    /** A value at a place, and what stands there in the schema. */
    private record Spot(ObjectNode parent, String key, JsonNode schema, String path) {}

    private static void spots(ObjectNode node, JsonNode schema, String path, List<Spot> into) {
        node.fieldNames().forEachRemaining(key -> {
            JsonNode value = node.get(key);
            JsonNode itsSchema = schema.path("properties").path(key);
            String itsPath = path + '/' + key;
            into.add(new Spot(node, key, itsSchema, itsPath));
            if (value instanceof ObjectNode inner) {
                spots(inner, itsSchema, itsPath, into);
            } else if (value instanceof ArrayNode items) {
                items.forEach(item -> {
                    if (item instanceof ObjectNode inner) {
                        spots(inner, itsSchema.path("items"), itsPath + "/*", into);
                    }
                });
            }
        });
    }

    private static void keys(JsonNode schema, String path, Set<String> into) {
        schema.path("properties").properties().forEach(property -> {
            String itsPath = path + '/' + property.getKey();
            into.add(itsPath);
            keys(property.getValue(), itsPath, into);
            keys(property.getValue().path("items"), itsPath + "/*", into);
        });
    }

    @Test
    void the_files_that_are_tried_are_good_and_have_every_key_of_the_schema() {
        Set<String> tried = new TreeSet<>();
        for (ObjectNode file : files()) {
            assertThat(VALIDATOR.validate(file)).isEmpty();
            assertThat(readerTakes(file)).as(file.toString()).isTrue();
            List<Spot> spots = new ArrayList<>();
            spots(file, SCHEMA, "", spots);
            spots.forEach(spot -> tried.add(spot.path()));
        }
        Set<String> known = new TreeSet<>();
        keys(SCHEMA, "", known);
        assertThat(known).hasSizeGreaterThan(90).isEqualTo(tried);
    }

    @Test
    void both_take_and_refuse_the_same_values_of_every_key() {
        List<String> disputed = new ArrayList<>();
        int tried = 0;
        for (int i = 0; i < files().size(); i++) {
            int count = spotsOf(files().get(i)).size();
            for (int j = 0; j < count; j++) {
                for (JsonNode other : values(spotsOf(files().get(i)).get(j))) {
                    ObjectNode file = files().get(i);
                    Spot spot = spotsOf(file).get(j);
                    spot.parent().set(spot.key(), other);
                    compare(file, spot.path() + ": " + other, disputed);
                    tried++;
                }
            }
        }
        assertThat(tried).isGreaterThan(300);
        assertThat(disputed).isEmpty();
    }

    @Test
    void both_miss_the_same_keys_and_know_no_others() {
        List<String> disputed = new ArrayList<>();
        for (int i = 0; i < files().size(); i++) {
            int count = spotsOf(files().get(i)).size();
            for (int j = 0; j < count; j++) {
                ObjectNode without = files().get(i);
                Spot spot = spotsOf(without).get(j);
                if (!spot.path().matches(".*/(alarms|board|string|loadWatts|outlets|name|procedure)")) {
                    spot.parent().remove(spot.key());
                    compare(without, spot.path() + " is missing", disputed);
                }
                ObjectNode more = files().get(i);
                spotsOf(more).get(j).parent().put("colour", "red");
                compare(more, spot.path() + " has a neighbour that is no key", disputed);
            }
        }
        assertThat(disputed).isEmpty();
    }

    /** Keys that the reader knows only to say what to write instead. */
    private static final Set<String> REFUSED =
            Set.of("/cells/*/seriesCells", "/alarms/webhook", "password", "signingSecret");

    @Test
    void every_key_the_reader_knows_is_in_the_schema() {
        Set<String> missing = new TreeSet<>();
        int mappings = 0;
        for (int i = 0; i < files().size(); i++) {
            int count = spotsOf(files().get(i)).size();
            for (int j = 0; j < count; j++) {
                ObjectNode file = files().get(i);
                Spot spot = spotsOf(file).get(j);
                String mapping = spot.path().substring(0, spot.path().lastIndexOf('/') + 1);
                JsonNode known = properties(mapping);
                spot.parent().put("colour", "red");
                for (String key : keysToldBy(file)) {
                    boolean refused = REFUSED.contains(key) || REFUSED.contains(mapping + key);
                    if (!known.has(key) && !refused) {
                        missing.add(mapping + key);
                    }
                }
                mappings++;
            }
        }
        assertThat(mappings).isGreaterThan(100);
        assertThat(missing).isEmpty();
    }

    private static JsonNode properties(String mapping) {
        JsonNode schema = SCHEMA;
        for (String step : mapping.split("/", -1)) {
            if (!step.isEmpty()) {
                schema = step.equals("*")
                        ? schema.path("items")
                        : schema.path("properties").path(step);
            }
        }
        return schema.path("properties");
    }

    /** The keys of the mapping in which "colour" stands, as the reader tells them. */
    private static List<String> keysToldBy(ObjectNode file) {
        try {
            RackFile.parse(file.toString(), "rack.yaml", Path.of("/srv"));
            throw new AssertionError("colour was taken for a key in " + file);
        } catch (RackFileFaulty e) {
            String told = e.faults().stream()
                    .filter(fault -> fault.contains("colour is not a key"))
                    .findFirst()
                    .orElseThrow();
            return List.of(told.substring(told.indexOf("Its keys are ") + "Its keys are ".length())
                    .split(", ", -1));
        }
    }

    private static List<Spot> spotsOf(ObjectNode file) {
        List<Spot> spots = new ArrayList<>();
        spots(file, SCHEMA, "", spots);
        return spots;
    }

    private static void compare(ObjectNode file, String what, List<String> disputed) {
        boolean schema = schemaTakes(file);
        boolean reader = readerTakes(file);
        if (schema != reader) {
            disputed.add(what + ": schema " + schema + ", reader " + reader);
        }
    }

    /** What a key may be and may not: its bounds, beyond them, its words, another word, another type. */
    private static List<JsonNode> values(Spot spot) {
        List<JsonNode> values = new ArrayList<>();
        JsonNode schema = spot.schema();
        String type =
                schema.path("type").isArray() ? "text" : schema.path("type").asText();
        boolean bound =
                spot.path().matches(".*/(channel|loadSensorChannel|ambientChannel|dummyChannel|loadOhms|loadWatts)");
        boolean named = spot.path().matches("/alarms/.*/name|/(boards|cells)/\\*/(name|board|string)");
        switch (type) {
            case "integer" -> {
                if (!bound) { // other keys of the file depend on it
                    values.add(schema.get("minimum"));
                    values.add(schema.get("maximum"));
                }
                values.add(MAPPER.valueToTree(schema.get("minimum").asLong() - 1));
                values.add(MAPPER.valueToTree(schema.get("maximum").asLong() + 1));
                values.add(MAPPER.valueToTree("many"));
                values.add(MAPPER.valueToTree(List.of()));
            }
            case "number" -> {
                boolean tolerance = spot.path().endsWith("loadTolerancePercent");
                if (!bound && !tolerance) {
                    values.add(schema.get("minimum"));
                    values.add(schema.get("maximum"));
                }
                values.add(MAPPER.valueToTree(schema.get("minimum").asDouble() - 0.001));
                values.add(MAPPER.valueToTree(schema.get("maximum").asDouble() + 0.001));
                values.add(MAPPER.valueToTree("much"));
            }
            case "boolean" -> values.add(MAPPER.valueToTree("perhaps"));
            case "object" -> values.add(MAPPER.valueToTree("a word"));
            case "array" -> values.add(MAPPER.valueToTree("a word"));
            case "string", "text" -> {
                values.add(MAPPER.valueToTree(List.of("a list")));
                if (schema.has("pattern")) {
                    values.add(MAPPER.valueToTree("\u0001 no such thing"));
                }
                if (schema.path("pattern").asText().startsWith("^[\\p{L}") && !named) {
                    values.add(MAPPER.valueToTree("Å 1_b-c.d"));
                    values.add(MAPPER.valueToTree("a".repeat(40)));
                    values.add(MAPPER.valueToTree("a".repeat(41)));
                    values.add(MAPPER.valueToTree(17));
                }
                if (schema.path("pattern").asText().startsWith("^([01]")) {
                    values.add(MAPPER.valueToTree("23:59"));
                    values.add(MAPPER.valueToTree("24:00"));
                }
            }
            default -> {
                StreamSupport.stream(schema.path("enum").spliterator(), false)
                        .filter(word -> !spot.path().endsWith("procedure"))
                        .forEach(values::add);
                values.add(MAPPER.valueToTree("no such word"));
            }
        }
        return values;
    }

    @Test
    void the_example_in_the_documentation_fits_the_schema() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "rack-file.md"));
        String example = page.substring(page.indexOf("```yaml") + 7, page.indexOf("```", page.indexOf("```yaml") + 7));
        assertThat(VALIDATOR.validate(tree(example))).isEmpty();
    }
}
