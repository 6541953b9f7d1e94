package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class AlarmTransitionsTest {

    /** Each line: state x step = state after; plain or latched where it matters. States and steps from ISA-18.2, from memory. */
    private static final List<String> LEGAL = List.of(
            "plain NORMAL x RAISED = UNACKNOWLEDGED",
            "plain UNACKNOWLEDGED x TOLD = UNACKNOWLEDGED",
            "plain UNACKNOWLEDGED x ACKNOWLEDGED = ACKNOWLEDGED",
            "plain UNACKNOWLEDGED x RETURNED = RETURNED_UNACKNOWLEDGED",
            "plain ACKNOWLEDGED x TOLD = ACKNOWLEDGED",
            "plain ACKNOWLEDGED x RETURNED = NORMAL",
            "plain RETURNED_UNACKNOWLEDGED x TOLD = RETURNED_UNACKNOWLEDGED",
            "plain RETURNED_UNACKNOWLEDGED x ACKNOWLEDGED = NORMAL",
            "plain RETURNED_UNACKNOWLEDGED x RAISED = UNACKNOWLEDGED",
            "latched NORMAL x RAISED = UNACKNOWLEDGED",
            "latched UNACKNOWLEDGED x TOLD = UNACKNOWLEDGED",
            "latched UNACKNOWLEDGED x ACKNOWLEDGED = ACKNOWLEDGED",
            "latched UNACKNOWLEDGED x RETURNED = LATCHED_UNACKNOWLEDGED",
            "latched ACKNOWLEDGED x TOLD = ACKNOWLEDGED",
            "latched ACKNOWLEDGED x RETURNED = LATCHED_ACKNOWLEDGED",
            "latched LATCHED_UNACKNOWLEDGED x TOLD = LATCHED_UNACKNOWLEDGED",
            "latched LATCHED_UNACKNOWLEDGED x ACKNOWLEDGED = LATCHED_ACKNOWLEDGED",
            "latched LATCHED_UNACKNOWLEDGED x RAISED = UNACKNOWLEDGED",
            "latched LATCHED_ACKNOWLEDGED x TOLD = LATCHED_ACKNOWLEDGED",
            "latched LATCHED_ACKNOWLEDGED x RESET = NORMAL",
            "latched LATCHED_ACKNOWLEDGED x RAISED = UNACKNOWLEDGED");

    private static final Set<AlarmStep> OF_COVER = Set.of(
            AlarmStep.SHELVED, AlarmStep.SHELVING_ENDED, AlarmStep.TAKEN_OUT_OF_SERVICE, AlarmStep.PUT_BACK_IN_SERVICE);

    @Test
    void every_state_and_every_step_lead_where_the_standard_says_or_are_refused() {
        List<String> found = new ArrayList<>();
        for (boolean latched : new boolean[] {false, true}) {
            for (AlarmState state : AlarmState.values()) {
                for (AlarmStep step : AlarmStep.values()) {
                    Optional<Standing> next = AlarmTransitions.next(new Standing(state, Cover.NONE), step, latched);
                    if (!OF_COVER.contains(step)) {
                        next.ifPresent(it -> found.add(
                                (latched ? "latched " : "plain ") + state + " x " + step + " = " + it.state()));
                    }
                }
            }
        }
        assertThat(found).containsExactlyInAnyOrderElementsOf(LEGAL);
    }

    @Test
    void no_state_and_step_are_listed_twice() {
        Set<String> seen = new HashSet<>();
        for (var row : AlarmTransitions.STATES) {
            for (String kind : row.latching() == AlarmTransitions.Latching.ANY
                    ? List.of("PLAIN", "LATCHED")
                    : List.of(row.latching().name())) {
                assertThat(seen.add(kind + row.from() + row.step()))
                        .as(row.toString())
                        .isTrue();
            }
        }
        for (var row : AlarmTransitions.COVERS) {
            assertThat(seen.add("cover " + row.from() + row.step()))
                    .as(row.toString())
                    .isTrue();
        }
    }

    @Test
    void every_step_is_legal_somewhere_and_every_state_is_reached_and_left() {
        for (boolean latched : new boolean[] {false, true}) {
            Set<Standing> reached = reachable(latched);
            Set<AlarmStep> taken = new HashSet<>();
            for (Standing standing : reached) {
                Set<AlarmStep> out = new HashSet<>();
                for (AlarmStep step : AlarmStep.values()) {
                    AlarmTransitions.next(standing, step, latched).ifPresent(next -> out.add(step));
                }
                assertThat(out).as(standing.toString()).isNotEmpty();
                taken.addAll(out);
            }
            assertThat(taken).hasSize(AlarmStep.values().length - (latched ? 0 : 1));
            assertThat(reached.stream().map(Standing::cover)).contains(Cover.values());
        }
        Set<AlarmState> states = new HashSet<>();
        reachable(true).forEach(standing -> states.add(standing.state()));
        reachable(false).forEach(standing -> states.add(standing.state()));
        assertThat(states).containsExactlyInAnyOrder(AlarmState.values());
    }

    private static Set<Standing> reachable(boolean latched) {
        Set<Standing> reached = new HashSet<>(Set.of(Standing.NOTHING));
        List<Standing> open = new ArrayList<>(reached);
        while (!open.isEmpty()) {
            Standing from = open.remove(open.size() - 1);
            for (AlarmStep step : AlarmStep.values()) {
                AlarmTransitions.next(from, step, latched).filter(reached::add).ifPresent(open::add);
            }
        }
        return reached;
    }

    @ParameterizedTest
    @CsvSource({
        "UNACKNOWLEDGED, NONE, SHELVED, UNACKNOWLEDGED, SHELVED",
        "LATCHED_ACKNOWLEDGED, NONE, SHELVED, LATCHED_ACKNOWLEDGED, SHELVED",
        "ACKNOWLEDGED, NONE, TAKEN_OUT_OF_SERVICE, ACKNOWLEDGED, OUT_OF_SERVICE",
        "ACKNOWLEDGED, SHELVED, TAKEN_OUT_OF_SERVICE, ACKNOWLEDGED, OUT_OF_SERVICE",
        "NORMAL, SHELVED, RAISED, UNACKNOWLEDGED, SHELVED",
        "UNACKNOWLEDGED, OUT_OF_SERVICE, RETURNED, RETURNED_UNACKNOWLEDGED, OUT_OF_SERVICE",
        "NORMAL, SHELVED, SHELVING_ENDED, NORMAL, NONE",
        "UNACKNOWLEDGED, SHELVED, SHELVING_ENDED, UNACKNOWLEDGED, NONE",
        "ACKNOWLEDGED, SHELVED, SHELVING_ENDED, UNACKNOWLEDGED, NONE",
        "ACKNOWLEDGED, OUT_OF_SERVICE, PUT_BACK_IN_SERVICE, UNACKNOWLEDGED, NONE",
        "RETURNED_UNACKNOWLEDGED, OUT_OF_SERVICE, PUT_BACK_IN_SERVICE, RETURNED_UNACKNOWLEDGED, NONE",
    })
    void a_cover_hides_the_true_state_and_gives_it_back(
            AlarmState state, Cover cover, AlarmStep step, AlarmState stateAfter, Cover coverAfter) {
        assertThat(AlarmTransitions.next(new Standing(state, cover), step, false)
                        .or(() -> AlarmTransitions.next(new Standing(state, cover), step, true)))
                .contains(new Standing(stateAfter, coverAfter));
    }

    @ParameterizedTest
    @CsvSource({
        "UNACKNOWLEDGED, SHELVED, ACKNOWLEDGED",
        "UNACKNOWLEDGED, OUT_OF_SERVICE, ACKNOWLEDGED",
        "LATCHED_ACKNOWLEDGED, SHELVED, RESET",
        "UNACKNOWLEDGED, SHELVED, TOLD",
        "UNACKNOWLEDGED, SHELVED, SHELVED",
        "UNACKNOWLEDGED, OUT_OF_SERVICE, SHELVED",
        "UNACKNOWLEDGED, OUT_OF_SERVICE, SHELVING_ENDED",
        "UNACKNOWLEDGED, SHELVED, PUT_BACK_IN_SERVICE",
        "NORMAL, NONE, SHELVED",
        "NORMAL, NONE, TAKEN_OUT_OF_SERVICE",
    })
    void what_is_covered_cannot_be_dealt_with_and_what_is_not_there_cannot_be_covered(
            AlarmState state, Cover cover, AlarmStep step) {
        for (boolean latched : new boolean[] {false, true}) {
            assertThat(AlarmTransitions.next(new Standing(state, cover), step, latched))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @EnumSource(AlarmState.class)
    void a_person_is_offered_what_is_legal_and_hot_is_never_put_away(AlarmState state) {
        Set<AlarmStep> hot = AlarmTransitions.allowed(new Standing(state, Cover.NONE), AlarmKind.HOT);
        Set<AlarmStep> reversed = AlarmTransitions.allowed(new Standing(state, Cover.NONE), AlarmKind.REVERSED);

        assertThat(hot).doesNotContain(AlarmStep.SHELVED, AlarmStep.TAKEN_OUT_OF_SERVICE);
        assertThat(reversed).containsAll(hot).doesNotContain(AlarmStep.RAISED, AlarmStep.RETURNED, AlarmStep.TOLD);
        assertThat(reversed.contains(AlarmStep.SHELVED)).isEqualTo(state != AlarmState.NORMAL);
    }
}
