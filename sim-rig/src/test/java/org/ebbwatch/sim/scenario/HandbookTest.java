package org.ebbwatch.sim.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.FaultParameter;
import org.junit.jupiter.api.Test;

/** docs/sim-rig.md says what the simulator does. */
class HandbookTest {
    private final String page = Files.readString(Path.of("..", "docs", "sim-rig.md"));

    HandbookTest() throws IOException {}

    @Test
    void its_example_is_a_scenario() throws ScenarioException {
        int begin = page.indexOf("```yaml\n") + "```yaml\n".length();
        Scenario scenario = Scenario.parse(page.substring(begin, page.indexOf("```", begin)), "docs/sim-rig.md");
        assertThat(scenario.boards()).hasSize(1);
        assertThat(scenario.boards().get(0).faults()).hasSize(2);
    }

    @Test
    void it_names_every_fault_and_every_parameter() {
        for (FaultKind kind : FaultKind.values()) {
            assertThat(page).contains('`' + kind.scenarioName() + '`');
            assertThat(kind.parameters()).extracting(FaultParameter::name).allSatisfy(name -> assertThat(page)
                    .contains('`' + name + '`'));
        }
    }
}
