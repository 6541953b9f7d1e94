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
import org.ebbwatch.judge.estimate.RestCurve;
import org.ebbwatch.judge.estimate.RestFit;
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
    void a_cell_loaded_in_pulses_shows_the_same_resistance_at_every_pulse_until_it_is_nearly_empty() throws Exception {
        List<StepResistance.Step> steps = steps("nasa_B0025_d00_li18650_pulse_to_1V92_rest_52min.csv");

        assertThat(steps).hasSizeGreaterThan(60);
        assertThat(steps.subList(0, 60)).allSatisfy(step -> assertThat(step.ohms())
                .isCloseTo(steps.get(0).ohms(), within(0.15 * steps.get(0).ohms())));
        assertThat(steps.get(steps.size() - 1).ohms())
                .isGreaterThan(2 * steps.get(0).ohms());
    }

    /** Every rest of at least 50 minutes; the pouch rests an hour again and again. */
    @ParameterizedTest
    @CsvSource({
        "nmc18650_overdischarge_to_1V03_rest.csv, 1, 0.30",
        "lfp26650_discharge_to_2V37_rest.csv, 1, 0.25",
        "nasa_B0025_d00_li18650_pulse_to_1V92_rest_52min.csv, 1, 0.20",
        "lmo_nca_pouch33Ah_hppc_25C.csv, 7, 0.05"
    })
    void ten_minutes_of_rest_hold_its_end_in_their_interval(String name, int leastRests, double mostWidth)
            throws Exception {
        Recording recording = recording(name);
        var load = new RecordedLoad(recording);
        List<Row> rows = recording.rows();
        var noise = new NoiseMeter();
        int rests = 0;
        int first = 0;
        boolean on = false;
        for (int place = 0; place <= rows.size(); place++) {
            boolean over = place == rows.size() || load.isOn(rows.get(place), on);
            if (!over) {
                noise.add(rows.get(place).volts(), recording.resolutionVolts());
            }
            if (over != on || place == rows.size()) {
                if (over && first > 0 && seconds(rows, place - 1) - seconds(rows, first) >= 3_000) {
                    assertHeld(rows.subList(first - 1, place), noise.deviation(recording.resolutionVolts()), mostWidth);
                    rests++;
                }
                first = place;
                on = over;
            }
        }
        assertThat(rests).isGreaterThanOrEqualTo(leastRests);
    }

    /** The first row is the last one on the load. */
    private static void assertHeld(List<Row> rest, double deviation, double mostWidth) {
        double began = rest.get(0).seconds();
        var curve = new RestCurve();
        curve.begin(0);
        for (Row row : rest) {
            if (row.seconds() - began <= 601) {
                curve.add(Math.round((row.seconds() - began) * 1000), row.volts());
            }
        }
        Row end = rest.get(rest.size() - 1);
        RestFit fit = RestFit.of(curve, end.seconds() - began, deviation).orElseThrow();
        assertThat(end.volts()).isBetween(fit.lowestVolts(), fit.highestVolts());
        assertThat(fit.highestVolts() - fit.lowestVolts()).isLessThan(mostWidth);
    }

    private static double seconds(List<Row> rows, int place) {
        return rows.get(place).seconds();
    }

    private static List<StepResistance.Step> steps(String name) throws IOException, Unreadable {
        Recording recording = recording(name);
        var load = new RecordedLoad(recording);
        var meter = new StepResistance(() -> 0);
        var noise = new NoiseMeter();
        List<StepResistance.Step> steps = new ArrayList<>();
        boolean on = false;
        for (Row row : recording.rows()) {
            long millis = Math.round(row.seconds() * 1000);
            boolean switched = on != load.isOn(row, on);
            on = load.isOn(row, on);
            if (switched) {
                noise.interrupt();
            }
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
