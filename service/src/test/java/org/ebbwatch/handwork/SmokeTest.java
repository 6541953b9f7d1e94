package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.ContactInput.Means;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.junit.jupiter.api.Test;

/** A smoke detector and the mains, wired to the contact inputs of a board. */
class SmokeTest extends EveningBench {
    private static final int SMOKE_INPUT = 0;
    private static final int MAINS_INPUT = 1;

    @Override
    List<ContactInput> contacts() {
        return List.of(
                new ContactInput(SMOKE_INPUT, Means.SMOKE, false),
                new ContactInput(MAINS_INPUT, Means.MAINS_LOST, false));
    }

    private void trip(int input, long millis) {
        rack.hands()
                .addFault(Fault.onBoard(FaultKind.CONTACT, now())
                        .with(Map.of("input", (double) input))
                        .lasting(millis));
    }

    private AlarmView alarm(AlarmKind kind) {
        return rack.alarms().alarms().stream()
                .filter(each -> each.kind() == kind)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + kind + " among " + rack.alarms()));
    }

    @Test
    void smoke_is_a_danger_of_the_rack_latched_and_opens_every_load_the_board_switches() {
        trip(SMOKE_INPUT, 10 * MINUTE);
        rack.pass(MINUTE);

        AlarmView smoke = alarm(AlarmKind.SMOKE);
        assertThat(smoke.urgency()).isEqualTo(Urgency.DANGER);
        assertThat(smoke.subject()).isEqualTo("rack");
        assertThat(smoke.latched()).isTrue();
        assertThat(smoke.toDo()).startsWith("Keep away. Clear the room.");
        assertThat(cell(SWITCHED).loadOn()).isFalse();
        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.HELD);
        assertThat(cell(SWITCHED).reason()).contains("smoke");
    }

    @Test
    void nobody_is_accused_and_no_load_closes_by_itself_when_it_is_over() {
        trip(SMOKE_INPUT, 10 * MINUTE);
        rack.pass(8 * 60 * MINUTE);

        assertThat(cell(SWITCHED).loadOn()).isFalse();
        assertThat(cell(SWITCHED).findings())
                .noneMatch(
                        finding -> finding.kind() == FindingKind.LOAD_LOST || finding.kind() == FindingKind.LOAD_STUCK);
        assertThat(act(SWITCHED, Act.DRAIN_AGAIN)).isInstanceOf(DeskAnswer.Done.class);
        rack.pass(MINUTE);
        assertThat(cell(SWITCHED).loadOn()).isTrue();
    }

    @Test
    void while_it_stands_nobody_puts_a_load_on_that_the_board_switches() {
        trip(SMOKE_INPUT, 60 * MINUTE);
        rack.pass(MINUTE);

        DeskAnswer again = act(SWITCHED, Act.DRAIN_AGAIN);
        assertThat(again).isInstanceOf(NotNow.class);
        assertThat(((NotNow) again).why()).contains("Smoke is reported");
        assertThat(act(FRESH, Act.PUT_ON)).isInstanceOf(NotNow.class);
    }

    @Test
    void a_load_that_hands_put_on_stays_on_and_its_cell_is_watched_as_before() {
        trip(SMOKE_INPUT, 10 * MINUTE);
        rack.pass(20 * MINUTE);

        assertThat(alarm(AlarmKind.SMOKE).state()).isEqualTo(AlarmState.LATCHED_UNACKNOWLEDGED);
        assertThat(cell(BY_HAND).phase()).isEqualTo(Phase.DRAIN);
        assertThat(cell(BY_HAND).findings()).isEmpty();
    }

    @Test
    void what_was_opened_for_smoke_stays_open_over_a_restart_of_the_service() {
        trip(SMOKE_INPUT, 10 * MINUTE);
        rack.pass(MINUTE);
        rack.close();
        rack = rack.again(records);
        rack.pass(30 * MINUTE);

        assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.HELD);
        assertThat(cell(SWITCHED).loadOn()).isFalse();
        List<List<String>> twice = rack.recordedAndFoldedAgain(cell(SWITCHED).id());
        assertThat(twice.get(1)).isEqualTo(twice.get(0));
    }

    @Test
    void lost_mains_ring_and_touch_no_load() {
        trip(MAINS_INPUT, 10 * MINUTE);
        rack.pass(MINUTE);

        assertThat(alarm(AlarmKind.MAINS_LOST).urgency()).isEqualTo(Urgency.RINGING);
        assertThat(cell(SWITCHED).loadOn()).isTrue();
        rack.pass(20 * MINUTE);
        assertThat(alarm(AlarmKind.MAINS_LOST).state().isActive()).isFalse();
    }
}
