package org.ebbwatch.evening.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.evening.rule.CellFacts.Switching;
import org.ebbwatch.evening.rule.EveningRules.Facts;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EveningRulesTest {
    private static final UUID ID = new UUID(1, 2);
    private static final HostFacts HOST = new HostFacts(true, 10_000, 1_000, "", List.of());
    private static final BoardFacts BOARD = new BoardFacts("left", true, "", false, 21, 35, 3_600_000, 0, 0, 3_600, 3);

    private static CellFacts cell(Phase phase, Switching switching, boolean loadOn, boolean drew) {
        return cell(phase, switching, loadOn, drew, Set.of(), Optional.of(LeadProof.ATTACHED), Optional.empty());
    }

    private static CellFacts cell(
            Phase phase,
            Switching switching,
            boolean loadOn,
            boolean drew,
            Set<FindingKind> findings,
            Optional<LeadProof> lead,
            Optional<LoadAnswer> answer) {
        return new CellFacts(
                ID,
                "A",
                phase,
                switching,
                loadOn,
                drew,
                false,
                false,
                false,
                !loadOn,
                findings,
                lead,
                22,
                21,
                answer,
                OptionalDouble.of(2));
    }

    private static Proof proof(CellFacts cell, Matter matter) {
        return CellPoints.of(cell).stream()
                .filter(point -> point.matter() == matter)
                .findFirst()
                .orElseThrow()
                .proof();
    }

    private static Proof worst(Facts facts, Matter matter) {
        return Proof.worst(EveningRules.points(facts).stream()
                .filter(point -> point.matter() == matter)
                .toList());
    }

    private static Facts facts(BoardFacts board, List<AlarmFacts> alarms, HostFacts host) {
        return new Facts(
                List.of(), List.of(board), List.of(new OutletFacts("hook", 0, "", true, "Anna")), alarms, host);
    }

    @Test
    void nothing_looked_at_is_nothing_proven() {
        assertThat(Proof.worst(List.of())).isEqualTo(Proof.NOT_PROVEN);
    }

    @Test
    void a_point_that_is_not_passed_says_what_to_do() {
        assertThatThrownBy(() -> Point.failed(Matter.LOAD, "A", "it opens", "it does not", ""))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Nested
    class A_load {
        @Test
        void that_hands_put_on_is_proven_by_what_it_drew_and_by_nothing_else() {
            assertThat(proof(cell(Phase.DRAIN, Switching.HANDS, true, true), Matter.LOAD))
                    .isEqualTo(Proof.PASSED);
            assertThat(proof(cell(Phase.DRAIN, Switching.HANDS, true, false), Matter.LOAD))
                    .isEqualTo(Proof.NOT_PROVEN);
            assertThat(proof(cell(Phase.DRAIN, Switching.HANDS, false, false), Matter.LOAD))
                    .isEqualTo(Proof.FAILED);
        }

        @Test
        void is_never_closed_in_rest_and_proven_by_the_recovery() {
            CellFacts rests = cell(Phase.REST, Switching.BOARD, false, false);
            assertThat(rests.mayToggle()).isFalse();
            assertThat(proof(rests, Matter.LOAD)).isEqualTo(Proof.PASSED);
        }

        @ParameterizedTest
        @EnumSource(LoadAnswer.Kind.class)
        void that_answered_otherwise_than_it_should_is_not_passed(LoadAnswer.Kind kind) {
            var answer = Optional.of(new LoadAnswer(kind, "seen"));
            CellFacts cell = cell(Phase.DRAIN, Switching.BOARD, true, false, Set.of(), Optional.empty(), answer);
            assertThat(proof(cell, Matter.LOAD) == Proof.PASSED).isEqualTo(kind == LoadAnswer.Kind.ANSWERS);
        }

        @ParameterizedTest
        @EnumSource(
                value = FindingKind.class,
                names = {"LOAD_LOST", "LOAD_STUCK"})
        void of_which_the_judge_complains_has_failed(FindingKind finding) {
            CellFacts cell =
                    cell(Phase.HELD, Switching.BOARD, true, true, Set.of(finding), Optional.empty(), Optional.empty());
            assertThat(proof(cell, Matter.LOAD)).isEqualTo(Proof.FAILED);
        }
    }

    @Nested
    class The_rest {
        @Test
        void passes_where_all_is_well() {
            assertThat(Proof.worst(EveningRules.points(facts(BOARD, List.of(), HOST))))
                    .isEqualTo(Proof.PASSED);
        }

        @Test
        void a_line_watched_for_less_than_ten_minutes_is_not_proven() {
            var young = new BoardFacts("left", true, "", false, 21, 35, 599_999, 0, 0, 600, 0);
            assertThat(worst(facts(young, List.of(), HOST), Matter.PORT)).isEqualTo(Proof.NOT_PROVEN);
        }

        @Test
        void a_calibration_older_than_twelve_months_is_not_proven_and_a_board_without_one_is_not_asked() {
            assertThat(worst(facts(calibrated(List.of()), List.of(), HOST), Matter.CALIBRATION))
                    .isEqualTo(Proof.PASSED);
            assertThat(worst(facts(calibrated(List.of("channel 3 412 days")), List.of(), HOST), Matter.CALIBRATION))
                    .isEqualTo(Proof.NOT_PROVEN);
            assertThat(EveningRules.points(facts(BOARD, List.of(), HOST)))
                    .noneMatch(point -> point.matter() == Matter.CALIBRATION);
        }

        private static BoardFacts calibrated(List<String> old) {
            return new BoardFacts("left", true, "", false, 21, 35, 3_600_000, 0, 0, 3_600, 3, 2, old);
        }

        @Test
        void more_than_one_frame_in_a_hundred_damaged_fails() {
            var noisy = new BoardFacts("left", true, "", false, 21, 35, 3_600_000, 0, 0, 3_600, 37);
            assertThat(worst(facts(noisy, List.of(), HOST), Matter.PORT)).isEqualTo(Proof.FAILED);
        }

        @Test
        void a_room_without_a_sensor_and_a_clock_that_is_odd_fail() {
            var blind = new BoardFacts("left", true, "", true, Double.NaN, 35, 3_600_000, 0, 0, 3_600, 0);
            assertThat(worst(facts(blind, List.of(), HOST), Matter.AMBIENT)).isEqualTo(Proof.FAILED);
            assertThat(worst(facts(blind, List.of(), HOST), Matter.BOARD_CLOCK)).isEqualTo(Proof.FAILED);
        }

        @Test
        void records_that_cannot_be_kept_and_cells_nobody_watches_fail() {
            var bad = new HostFacts(true, 10_000, 1_000, "the disk is full", List.of("Cell B is not watched."));
            assertThat(worst(facts(BOARD, List.of(), bad), Matter.STORAGE)).isEqualTo(Proof.FAILED);
            assertThat(worst(facts(BOARD, List.of(), bad), Matter.WATCHED)).isEqualTo(Proof.FAILED);
        }

        @Test
        void a_rack_without_an_outlet_fails() {
            var silent = new Facts(List.of(), List.of(BOARD), List.of(), List.of(), HOST);
            assertThat(worst(silent, Matter.OUTLET)).isEqualTo(Proof.FAILED);
        }
    }

    @Nested
    class An_alarm {
        private Proof of(AlarmKind kind, AlarmState state, Cover cover) {
            return worst(facts(BOARD, List.of(new AlarmFacts(kind, "A", state, cover)), HOST), Matter.ALARM);
        }

        @Test
        void somebody_knows_of_is_no_obstacle_unless_it_is_a_danger() {
            assertThat(of(AlarmKind.HELD, AlarmState.ACKNOWLEDGED, Cover.NONE)).isEqualTo(Proof.PASSED);
            assertThat(of(AlarmKind.HOT, AlarmState.ACKNOWLEDGED, Cover.NONE)).isEqualTo(Proof.FAILED);
            assertThat(of(AlarmKind.HELD, AlarmState.UNACKNOWLEDGED, Cover.NONE))
                    .isEqualTo(Proof.FAILED);
            assertThat(of(AlarmKind.REVERSED, AlarmState.LATCHED_ACKNOWLEDGED, Cover.NONE))
                    .isEqualTo(Proof.FAILED);
        }

        @Test
        void that_rings_may_not_be_put_away_and_one_that_can_wait_may() {
            assertThat(of(AlarmKind.SILENT, AlarmState.ACKNOWLEDGED, Cover.OUT_OF_SERVICE))
                    .isEqualTo(Proof.FAILED);
            assertThat(of(AlarmKind.OVERDUE, AlarmState.UNACKNOWLEDGED, Cover.SHELVED))
                    .isEqualTo(Proof.PASSED);
        }
    }
}
