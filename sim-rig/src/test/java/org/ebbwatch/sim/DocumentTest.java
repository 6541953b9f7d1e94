package org.ebbwatch.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.FaultParameter;
import org.ebbwatch.sim.scenario.Scenario;
import org.ebbwatch.sim.scenario.ScenarioException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What docs/sim-rig.md says, against what the program takes. */
class DocumentTest {
    private static String document() throws IOException {
        return Files.readString(Path.of(System.getProperty("basedir", ""), "../docs/sim-rig.md"));
    }

    private static String scenario() throws IOException {
        Matcher block = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(document());
        assertThat(block.find()).isTrue();
        return block.group(1);
    }

    @Test
    void its_scenario_is_a_good_one() throws IOException, ScenarioException {
        Scenario scenario = Scenario.parse(scenario(), "docs/sim-rig.md");

        assertThat(scenario.boards().get(0).channels()).hasSize(11);
        assertThat(scenario.boards().get(0).faults()).hasSize(4);
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void it_names_every_fault_with_its_strengths(FaultKind kind) throws IOException {
        String row = document()
                .lines()
                .filter(line ->
                        line.startsWith("| `") && line.split("\\|", -1)[1].contains("`" + kind.scenarioName() + "`"))
                .filter(line -> line.split("\\|", -1).length == 5)
                .reduce((first, second) -> second)
                .orElseThrow(() -> new AssertionError(kind.scenarioName() + " is not in the document"));
        for (FaultParameter parameter : kind.parameters()) {
            Matcher strength = Pattern.compile("`" + parameter.name() + "` \\(([0-9.e]+)\\)")
                    .matcher(row);
            assertThat(strength.find()).as("%s of %s", parameter.name(), kind).isTrue();
            assertThat(new BigDecimal(strength.group(1)).doubleValue()).isEqualTo(parameter.usual());
        }
    }

    /** The complaint about a key that nobody knows lists those that are known. */
    @ParameterizedTest
    @EnumSource(Place.class)
    void it_names_every_key(Place place) throws IOException {
        String yaml = place.yaml;
        String complaint = "";
        try {
            Scenario.parse(yaml, "x");
        } catch (ScenarioException e) {
            complaint = e.getMessage();
        }
        Matcher known = Pattern.compile("known here: (.*)").matcher(complaint);
        assertThat(known.find()).as(complaint).isTrue();
        for (String key : known.group(1).split(", ", -1)) {
            assertThat(document()).contains("`" + key + "`");
        }
    }

    /** A scenario with one unknown key each. */
    private enum Place {
        SCENARIO("qqqq: 1"),
        BOARD("boards: [{qqqq: 1}]"),
        CONVERTER("boards: [{serialNumber: A, converter: {qqqq: 1}}]"),
        AMBIENT("boards: [{serialNumber: A, ambient: {qqqq: 1}}]"),
        CHANNEL("boards: [{serialNumber: A, channels: [{qqqq: 1}]}]"),
        CELL("boards: [{serialNumber: A, channels: [{cell: {qqqq: 1}}]}]"),
        STRING("boards: [{serialNumber: A, strings: [{qqqq: 1}]}]"),
        FAULT("boards: [{serialNumber: A, faults: [{qqqq: 1}]}]");

        private final String yaml;

        Place(String yaml) {
            this.yaml = yaml;
        }
    }
}
