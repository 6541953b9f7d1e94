package org.ebbwatch.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.estimate.NoiseMeter;
import org.ebbwatch.judge.estimate.StepResistance;
import org.ebbwatch.replay.Recording.Row;
import org.ebbwatch.replay.Recording.Unreadable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the estimators make of recordings of real cells. Sources: an over-discharged 18650 and a discharged 26650 (ARTS-Lab,
 * CC BY-SA 4.0), a short of a pouch cell (University of Michigan, in a pull request to PyBaMM), two runs of the NASA Ames
 * battery data set (Saha and Goebel 2007), a pulse test of a 33 Ah pouch (doi 10.5281/zenodo.2580327).
 */
class RecordedEstimatesTest {

    /** Read off the recordings after about a second: 44 and 43 milliohms; the pouch 1.6 at 0.5 s of its first pulse. */
    @ParameterizedTest
    @CsvSource({
        "nmc18650_overdischarge_to_1V03_rest.csv, 0.044",
        "lfp26650_discharge_to_2V37_rest.csv, 0.043",
        "lmo_nca_pouch33Ah_hppc_25C.csv, 0.0016"
    })
    void the_internal_resistance_of_a_load_step_is_within_a_tenth_of_what_was_read_off(String name, double ohms)
            throws Exception {
        assertThat(steps(name).get(0).ohms()).isCloseTo(ohms, within(ohms / 10));
    }

    @Test
    void a_cell_loaded_in_pulses_shows_the_same_resistance_at_every_pulse_that_stands_out() throws Exception {
        List<StepResistance.Step> steps = steps("nasa_B0025_d00_li18650_pulse_to_1V92_rest_52min.csv");

        assertThat(steps).hasSizeGreaterThan(50);
        assertThat(steps).allSatisfy(step -> assertThat(step.ohms())
                .isCloseTo(steps.get(0).ohms(), within(0.15 * steps.get(0).ohms())));
    }

    private static List<StepResistance.Step> steps(String name) throws IOException, Unreadable {
        Recording recording = recording(name);
        var load = new RecordedLoad(recording);
        var meter = new StepResistance(load.ohms(), 0);
        var noise = new NoiseMeter();
        List<StepResistance.Step> steps = new ArrayList<>();
        boolean on = false;
        for (Row row : recording.rows()) {
            long millis = Math.round(row.seconds() * 1000);
            on = load.isOn(row, on);
            noise.add(row.volts(), recording.resolutionVolts());
            if (on) {
                meter.loaded(
                        millis, row.volts(), load.amperes(row), noise.expandedDifference(recording.resolutionVolts()));
            } else {
                meter.open(millis, row.volts(), load.amperes(row));
            }
            meter.latest()
                    .filter(step -> step.millis() == millis)
                    .filter(step ->
                            steps.isEmpty() || steps.get(steps.size() - 1).millis() != millis)
                    .ifPresent(steps::add);
        }
        return steps;
    }

    private static Recording recording(String name) throws IOException, Unreadable {
        Path file = Path.of(System.getProperty("recordings", "../../shared/data/cells"), name);
        assumeTrue(Files.exists(file), () -> "no recording " + file + "; name its folder with -Drecordings=FOLDER");
        return Recording.parse(Files.readString(file));
    }
}
