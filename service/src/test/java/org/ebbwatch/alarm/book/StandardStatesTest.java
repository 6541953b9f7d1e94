package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The state table of ISA-18.2 / IEC 62682, row by row, in its letters (A to D, G and I: public summaries of ISA-18.2; E and F: from
 * memory; latched and shelved: reference.opcfoundation.org, Core Part 9 v105, 4.8). H, suppressed by design, is not used.
 */
class StandardStatesTest {
    private static final Map<String, AlarmState> LETTERS = Map.of(
            "A", AlarmState.NORMAL,
            "B", AlarmState.UNACKNOWLEDGED,
            "C", AlarmState.ACKNOWLEDGED,
            "D", AlarmState.RETURNED_UNACKNOWLEDGED,
            "E", AlarmState.LATCHED_UNACKNOWLEDGED,
            "F", AlarmState.LATCHED_ACKNOWLEDGED);

    private static Standing inView(String letter) {
        return new Standing(LETTERS.get(letter), Cover.NONE);
    }

    @ParameterizedTest(name = "{0} to {2}: {3}")
    @CsvSource({
        "A, RAISED, B, onset, false",
        "B, ACKNOWLEDGED, C, acknowledged, false",
        "B, RETURNED, D, clears before it is acknowledged, false",
        "C, RETURNED, A, clears after it was acknowledged, false",
        "D, ACKNOWLEDGED, A, acknowledged after it cleared, false",
        "D, RAISED, B, alarms again before it was acknowledged, false",
        "A, RAISED, B, onset, true",
        "B, ACKNOWLEDGED, C, acknowledged, true",
        "B, RETURNED, E, clears and stays latched, true",
        "C, RETURNED, F, clears after it was acknowledged and stays latched, true",
        "E, ACKNOWLEDGED, F, acknowledged while latched, true",
        "F, RESET, A, reset by a person, true",
        "E, RAISED, B, alarms again while latched, true",
        "F, RAISED, B, alarms again while latched and acknowledged, true",
    })
    void every_transition_of_the_standard_is_made(String from, AlarmStep step, String to, String why, boolean latched) {
        assertThat(AlarmTransitions.next(inView(from), step, latched)).as(why).contains(inView(to));
    }

    /** C to B, re-alarm: here only when a person's cover goes while the condition still stands. */
    @ParameterizedTest
    @CsvSource({"SHELVED, SHELVING_ENDED", "OUT_OF_SERVICE, PUT_BACK_IN_SERVICE"})
    void an_acknowledged_alarm_alarms_again_when_its_cover_goes(Cover cover, AlarmStep uncovering) {
        assertThat(AlarmTransitions.next(new Standing(AlarmState.ACKNOWLEDGED, cover), uncovering, false))
                .contains(inView("B"));
        assertThat(AlarmTransitions.next(inView("C"), AlarmStep.RAISED, false)).isEmpty();
    }

    /** Any to G or I and back to the true state, whatever happened meanwhile; both keep evaluating beneath. */
    @ParameterizedTest
    @EnumSource(
            value = AlarmState.class,
            names = {"NORMAL"},
            mode = EnumSource.Mode.EXCLUDE)
    void whatever_is_put_away_comes_back_in_its_true_state(AlarmState state) {
        boolean latched = state.name().startsWith("LATCHED");
        Map<AlarmStep, AlarmStep> ways = Map.of(
                AlarmStep.SHELVED, AlarmStep.SHELVING_ENDED,
                AlarmStep.TAKEN_OUT_OF_SERVICE, AlarmStep.PUT_BACK_IN_SERVICE);
        AlarmState back = state == AlarmState.ACKNOWLEDGED ? AlarmState.UNACKNOWLEDGED : state;
        ways.forEach((away, home) -> assertThat(AlarmTransitions.next(new Standing(state, Cover.NONE), away, latched)
                        .flatMap(covered -> AlarmTransitions.next(covered, home, latched)))
                .contains(new Standing(back, Cover.NONE)));
    }

    @ParameterizedTest
    @CsvSource({"SHELVED, SHELVING_ENDED", "OUT_OF_SERVICE, PUT_BACK_IN_SERVICE"})
    void the_condition_goes_on_beneath_a_cover(Cover cover, AlarmStep uncovering) {
        var covered = new Standing(AlarmState.UNACKNOWLEDGED, cover);
        Standing gone =
                AlarmTransitions.next(covered, AlarmStep.RETURNED, false).orElseThrow();
        Standing again = AlarmTransitions.next(gone, AlarmStep.RAISED, false).orElseThrow();

        assertThat(gone).isEqualTo(new Standing(AlarmState.RETURNED_UNACKNOWLEDGED, cover));
        assertThat(AlarmTransitions.next(gone, uncovering, false)).contains(inView("D"));
        assertThat(AlarmTransitions.next(again, uncovering, false)).contains(inView("B"));
    }
}
