package org.ebbwatch.morning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.ebbwatch.morning.InventedNight.cleared;
import static org.ebbwatch.morning.InventedNight.found;
import static org.ebbwatch.morning.InventedNight.phase;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.Optional;
import java.util.OptionalLong;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.morning.MorningReport.AlarmLine;
import org.ebbwatch.morning.MorningReport.CellLine;
import org.ebbwatch.morning.MorningReport.Gap;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.plan.Task;
import org.junit.jupiter.api.Test;

class MorningReportTest {
    private static final long HOUR = 3_600_000;

    private final MorningReport report = InventedNight.eventful().report();

    private static CellLine cell(MorningReport report, String tag) {
        return report.cells().stream()
                .filter(cell -> cell.tag().equals(tag))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_text_is_the_one_that_was_agreed_on() throws IOException {
        assertThat(MorningText.of(report, ZoneOffset.UTC)).isEqualTo(golden("eventful"));
    }

    @Test
    void a_night_in_which_nothing_happened_is_told_in_as_many_words() throws IOException {
        MorningReport quiet = new InventedNight()
                .cell(0, "torch-2", 30, 26 * HOUR, Phase.DRAIN, phase(29, Phase.DRAIN))
                .report();

        assertThat(MorningText.of(quiet, ZoneOffset.UTC)).isEqualTo(golden("quiet"));
    }

    private static String golden(String name) throws IOException {
        try (InputStream text = MorningReportTest.class.getResourceAsStream("/morning/" + name + ".txt")) {
            assertThat(text).as("the agreed text").isNotNull();
            return new String(text.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void a_cell_is_told_by_where_it_was_where_it_is_and_what_it_waits_for() {
        CellLine drill = cell(report, "drill-3b");

        assertThat(drill.evening()).contains(Phase.DRAIN);
        assertThat(drill.now()).isEqualTo(Phase.REST);
        assertThat(drill.raised()).containsExactly(FindingKind.SILENT);
        assertThat(drill.next().orElseThrow().task()).isEqualTo(Task.TIE_OFF);
        assertThat(drill.needsSomebody()).isFalse();
        assertThat(cell(report, "vacuum-6").needsSomebody()).isTrue();
    }

    @Test
    void a_cell_that_came_in_the_night_has_no_evening_and_one_that_left_before_it_is_not_told() {
        assertThat(cell(report, "kite-1").evening()).isEmpty();
        assertThat(cell(report, "radio-4").next()).isEmpty();
        assertThat(report.cells()).extracting(CellLine::tag).doesNotContain("toy-9");
    }

    @Test
    void a_gap_that_two_cells_saw_is_one() {
        assertThat(report.gaps())
                .containsExactly(new Gap(
                        "left",
                        InventedNight.MORNING - Math.round(3.5 * HOUR),
                        OptionalLong.of(InventedNight.MORNING - Math.round(3.4 * HOUR)),
                        "Nothing heard from the board."));
    }

    @Test
    void a_gap_of_the_day_before_is_left_out_and_one_that_lasts_is_open() {
        MorningReport night = new InventedNight()
                .cell(
                        0,
                        "torch-2",
                        30,
                        0,
                        Phase.DRAIN,
                        found(20, FindingKind.SILENT, "Nothing heard."),
                        cleared(19, FindingKind.SILENT),
                        found(1, FindingKind.SILENT, "Nothing heard."))
                .report();

        assertThat(night.gaps()).hasSize(1);
        assertThat(night.gaps().get(0).untilWallMillis()).isEmpty();
    }

    @Test
    void an_alarm_is_told_with_the_state_it_is_in_now_and_an_old_one_as_long_as_it_lives() {
        MorningReport night = new InventedNight()
                .cell(0, "torch-2", 30, 0, Phase.DRAIN)
                .alarm(0, "torch-2", AlarmKind.WARMING, 20, AlarmState.ACKNOWLEDGED, "Warming.")
                .report();

        assertThat(night.alarms()).extracting(AlarmLine::state).containsExactly(AlarmState.ACKNOWLEDGED);
        assertThat(MorningText.inShort(night)).contains("No alarm was raised.");
        assertThat(report.alarms())
                .extracting(AlarmLine::about, AlarmLine::state)
                .containsExactly(tuple("vacuum-6", AlarmState.UNACKNOWLEDGED), tuple("drill-3b", AlarmState.NORMAL));
    }

    @Test
    void where_the_evening_is_too_long_ago_to_be_known_nothing_is_guessed() {
        Past[] full = Collections.nCopies(PassageView.PAST_KEPT, cleared(1, FindingKind.STALLED))
                .toArray(Past[]::new);
        MorningReport night =
                new InventedNight().cell(0, "torch-2", 30, 0, Phase.DRAIN, full).report();

        assertThat(cell(night, "torch-2").evening()).isEqualTo(Optional.empty());
    }
}
