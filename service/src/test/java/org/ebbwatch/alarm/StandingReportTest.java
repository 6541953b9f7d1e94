package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.draining;
import static org.ebbwatch.alarm.Standings.standing;

import java.util.Optional;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Report;
import org.ebbwatch.alarm.book.Report.Condition;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.junit.jupiter.api.Test;

class StandingReportTest {

    private static AlarmKind[] kinds(Report report) {
        return report.conditions().stream().map(Condition::kind).toArray(AlarmKind[]::new);
    }

    @Test
    void every_finding_is_a_condition_with_what_is_needed_to_read_up_its_cause() {
        Report report = StandingReport.of(draining(3, FindingKind.WARMING, FindingKind.STALLED), false);

        assertThat(kinds(report)).containsExactly(AlarmKind.WARMING, AlarmKind.STALLED);
        assertThat(report.conditions().get(0).cause())
                .isEqualTo(new Cause(
                        "WARMING: a line \"with\" µ.",
                        Optional.of(Standings.id(3)),
                        "cell 3",
                        "bench",
                        3,
                        80_000,
                        42,
                        60));
    }

    @Test
    void held_by_a_ringing_finding_is_told_by_that_finding() {
        String line = Standings.finding(FindingKind.CUT_OFF).line();

        assertThat(kinds(StandingReport.of(standing(0, Phase.HELD, line, FindingKind.CUT_OFF), false)))
                .containsExactly(AlarmKind.CUT_OFF);
    }

    @Test
    void held_for_another_reason_is_told_by_itself() {
        assertThat(kinds(StandingReport.of(standing(0, Phase.HELD, "another cell?"), false)))
                .containsExactly(AlarmKind.HELD);
        assertThat(kinds(StandingReport.of(standing(0, Phase.HELD, "another cell?", FindingKind.SENSOR_FAULT), false)))
                .containsExactly(AlarmKind.SENSOR_FAULT, AlarmKind.HELD);
        assertThat(StandingReport.of(standing(0, Phase.HELD, "another cell?"), false)
                        .conditions()
                        .get(0)
                        .cause()
                        .line())
                .isEqualTo("another cell?");
    }

    @Test
    void held_by_what_does_not_ring_is_told_by_itself() {
        String line = Standings.finding(FindingKind.OVERDUE).line();

        assertThat(kinds(StandingReport.of(standing(0, Phase.HELD, line, FindingKind.OVERDUE), false)))
                .containsExactly(AlarmKind.OVERDUE, AlarmKind.HELD);
    }

    @Test
    void a_passage_that_is_over_has_no_conditions() {
        Report report = StandingReport.of(standing(0, Phase.WITHDRAWN, "withdrawn", FindingKind.HOT), false);

        assertThat(report.over()).isTrue();
        assertThat(report.conditions()).isEmpty();
    }
}
