package org.ebbwatch.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.replay.Recording.Unreadable;
import org.junit.jupiter.api.Test;

/**
 * Recordings of real cells that nobody of this project made, judged. Sources: a short of a pouch cell (University of Michigan, in
 * a pull request to PyBaMM); an over-discharged 18650 and a discharged 26650 (ARTS-Lab, CC BY-SA 4.0); two runs of the NASA
 * Ames battery data set (Saha and Goebel 2007).
 */
class RecordingsTest {

    @Test
    void a_short_to_20_millivolts_comes_back_within_ten_seconds_and_its_second_short_is_sag() throws Exception {
        Replay replay = judged("short_pouch_100soc.csv", 4.6, Chemistry.LAYERED_OXIDE);
        assertThat(times(replay, FindingKind.REBOUND))
                .satisfiesExactly(at -> assertThat(at).isBetween(1485.7, 1495.8), at -> assertThat(at)
                        .isBetween(1810.7, 1820.8));
        assertThat(times(replay, FindingKind.HOT)).isNotEmpty();
        assertThat(times(replay, FindingKind.HOT).get(0)).isBetween(428.0, 445.0);
        assertThat(kinds(replay))
                .doesNotContain(
                        FindingKind.CUT_OFF, FindingKind.LOAD_LOST, FindingKind.LOAD_STUCK, FindingKind.LEAD_OPEN);
        // The source gives 3.05 Ah and 1.45 Wh for the first short alone.
        assertThat(replay.judge().ampereHours()).isBetween(3.05, 3.2);
        assertThat(replay.judge().wattHours()).isBetween(1.44, 1.47);
        assertNeverEmpty(replay);
    }

    @Test
    void a_cell_discharged_to_1_03_volts_comes_back() throws Exception {
        Replay replay = judged("nmc18650_overdischarge_to_1V03_rest.csv", 3.5, Chemistry.LAYERED_OXIDE);
        assertThat(times(replay, FindingKind.REBOUND)).isNotEmpty();
        assertNeverEmpty(replay);
    }

    @Test
    void a_cell_discharged_to_2_37_volts_comes_back() throws Exception {
        Replay replay = judged("lfp26650_discharge_to_2V37_rest.csv", 2.6, Chemistry.LFP);
        assertThat(times(replay, FindingKind.REBOUND)).isNotEmpty();
        assertNeverEmpty(replay);
    }

    @Test
    void a_cell_loaded_in_pulses_comes_back_for_certain_in_its_rest_and_its_load_is_never_lost() throws Exception {
        Replay replay = judged("nasa_B0025_d00_li18650_pulse_to_1V92_rest_52min.csv", 2.0, Chemistry.LAYERED_OXIDE);
        assertThat(times(replay, FindingKind.REBOUND))
                .as("between pulses the load is off for one reading only, which confirms nothing")
                .singleElement(InstanceOfAssertFactories.DOUBLE)
                .isBetween(3_400.0, 3_420.0);
        assertThat(kinds(replay)).containsOnly(FindingKind.REBOUND, FindingKind.WARMING);
        assertNeverEmpty(replay);
    }

    @Test
    void a_pulse_test_shows_nothing_but_rebounds_and_the_missing_thermometer() throws Exception {
        Replay replay = judged("lmo_nca_pouch33Ah_hppc_25C.csv", 33, Chemistry.LAYERED_OXIDE);
        assertThat(kinds(replay)).containsOnly(FindingKind.REBOUND, FindingKind.SENSOR_FAULT);
        assertNeverEmpty(replay);
    }

    @Test
    void a_bad_contact_that_reads_a_fifth_of_a_volt_is_an_open_lead_and_never_empty() throws Exception {
        Replay replay = judged("nasa_B0050_d17_fault_reads_0V2_at_no_load_then_4V06.csv", 2.0, Chemistry.LAYERED_OXIDE);
        assertThat(times(replay, FindingKind.LEAD_OPEN)).isNotEmpty();
        assertThat(times(replay, FindingKind.LEAD_OPEN).get(0)).isBetween(341.0, 352.0);
        assertNeverEmpty(replay);
    }

    @Test
    void a_finite_absurd_current_is_a_sensor_fault_and_reaches_no_sum() throws Exception {
        String name = "fault_overrange_sentinel_3p4e38.csv";
        String text = recording(name);
        Replay replay = Replay.judge(Recording.parse(text), card(2.6, 1, Chemistry.LFP), Procedure.careful());
        Replay cleaned = Replay.judge(
                Recording.parse(text.replace("3.4e+38", "")), card(2.6, 1, Chemistry.LFP), Procedure.careful());
        assertThat(kinds(replay)).contains(FindingKind.SENSOR_FAULT);
        assertThat(kinds(cleaned)).doesNotContain(FindingKind.SENSOR_FAULT);
        assertThat(replay.judge().ampereHours())
                .isBetween(0.005, 0.02)
                .isEqualTo(cleaned.judge().ampereHours());
        assertThat(replay.judge().wattHours()).isEqualTo(cleaned.judge().wattHours());
    }

    @Test
    void a_recording_that_cannot_be_read_says_where_and_why() {
        assertThatThrownBy(() -> Recording.parse("seconds,volts\n0,4.1\n1,four\n"))
                .isInstanceOf(Unreadable.class)
                .hasMessageContaining("line 3, field 2")
                .hasMessageContaining("four");
        assertThatThrownBy(() -> Recording.parse("seconds,amperes\n"))
                .isInstanceOf(Unreadable.class)
                .hasMessageContaining("no column volts");
        assertThatThrownBy(() -> Recording.parse("seconds,volts\n5,4.1\n4,4.1\n"))
                .isInstanceOf(Unreadable.class)
                .hasMessageContaining("line 3");
        assertThatThrownBy(() -> Recording.parse("seconds,volts\n5\n"))
                .isInstanceOf(Unreadable.class)
                .hasMessageContaining("line 2");
    }

    private static void assertNeverEmpty(Replay replay) {
        assertThat(replay.told())
                .noneMatch(told -> told.event() instanceof PhaseChanged changed
                        && (changed.to() == Phase.TIE_OFF || changed.to() == Phase.RELEASED));
    }

    private static List<FindingKind> kinds(Replay replay) {
        return replay.told().stream()
                .filter(told -> told.event() instanceof Raised)
                .map(told -> ((Raised) told.event()).finding().kind())
                .toList();
    }

    private static List<Double> times(Replay replay, FindingKind kind) {
        return replay.told().stream()
                .filter(told -> told.event() instanceof Raised raised
                        && raised.finding().kind() == kind)
                .map(Replay.Told::seconds)
                .toList();
    }

    private static Replay judged(String name, double ampereHours, Chemistry chemistry) throws IOException, Unreadable {
        Recording recording = Recording.parse(recording(name));
        return Replay.judge(
                recording, card(ampereHours, Replay.suggestedOhms(recording), chemistry), Procedure.careful());
    }

    private static CellCard card(double ampereHours, double ohms, Chemistry chemistry) {
        return new CellCard("recording", chemistry, ampereHours, ohms, false, false);
    }

    private static String recording(String name) throws IOException {
        Path file = Path.of(System.getProperty("recordings", "../../shared/data/cells"), name);
        assumeTrue(Files.exists(file), () -> "no recording " + file + "; name its folder with -Drecordings=FOLDER");
        return Files.readString(file);
    }
}
