package org.ebbwatch.sim.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FaultScheduleTest {
    private final List<String> log = new ArrayList<>();
    private final FaultSchedule.Effect effect = new FaultSchedule.Effect() {
        @Override
        public void begin(Fault fault) {
            log.add("+" + fault.kind());
        }

        @Override
        public void end(Fault fault) {
            log.add("-" + fault.kind());
        }
    };

    @Test
    void a_fault_begins_at_its_time_and_ends_after_its_duration() {
        Fault fault = Fault.on(2, FaultKind.LOAD_LOST, Trigger.at(5_000)).lasting(2_000);
        FaultSchedule schedule = new FaultSchedule(List.of(fault));
        schedule.advance(4_999, effect);
        assertThat(log).isEmpty();
        schedule.advance(5_000, effect);
        assertThat(log).containsExactly("+LOAD_LOST");
        assertThat(schedule.standing(2)).containsExactly(fault);
        assertThat(schedule.standing(1)).isEmpty();
        schedule.advance(7_000, effect);
        assertThat(log).containsExactly("+LOAD_LOST", "-LOAD_LOST");
        assertThat(schedule.standing(2)).isEmpty();
    }

    @Test
    void a_fault_shorter_than_a_step_begins_and_ends_in_order() {
        FaultSchedule schedule = new FaultSchedule(List.of(
                Fault.on(0, FaultKind.LOAD_STUCK, Trigger.at(3)),
                Fault.on(0, FaultKind.LOAD_LOST, Trigger.at(1)).lasting(1)));
        schedule.advance(10_000, effect);

        assertThat(log).containsExactly("+LOAD_LOST", "-LOAD_LOST", "+LOAD_STUCK");
    }

    @Test
    void a_fault_waits_for_what_happens_on_its_own_channel() {
        FaultSchedule schedule =
                new FaultSchedule(List.of(Fault.on(1, FaultKind.LOOSE_TIE, Trigger.after(Happening.BONDED, 60_000))));
        schedule.happened(Happening.BONDED, 0, 1_000);
        schedule.happened(Happening.PARTED, 1, 1_000);
        schedule.advance(1_000_000, effect);
        assertThat(log).isEmpty();
        schedule.happened(Happening.BONDED, 1, 1_000_000);
        schedule.advance(1_059_999, effect);
        assertThat(log).isEmpty();
        schedule.advance(1_060_000, effect);
        assertThat(log).containsExactly("+LOOSE_TIE");
    }

    @Test
    void only_the_occurrence_asked_for_counts_and_only_once() {
        FaultSchedule schedule = new FaultSchedule(
                List.of(new Fault(FaultKind.LOAD_LOST, 0, new Trigger(Happening.LOAD_CLOSED, 2, 0), 1, Map.of())));
        for (int time = 1; time <= 5; time++) {
            schedule.happened(Happening.LOAD_CLOSED, 0, time * 10L);
            schedule.advance(time * 10L + 5, effect);
        }
        assertThat(log).containsExactly("+LOAD_LOST", "-LOAD_LOST");
    }

    @Test
    void a_fault_of_the_board_hears_every_channel() {
        FaultSchedule schedule =
                new FaultSchedule(List.of(Fault.onBoard(FaultKind.SILENT, Trigger.after(Happening.LOAD_OPENED, 0))));
        schedule.happened(Happening.LOAD_OPENED, 9, 50);
        schedule.advance(50, effect);

        assertThat(log).containsExactly("+SILENT");
    }

    @Test
    void what_makes_no_sense_is_refused() {
        assertThatThrownBy(() -> Fault.on(0, FaultKind.SILENT, Trigger.at(0)))
                .hasMessage("silent befalls the whole board and takes no channel");
        assertThatThrownBy(() -> Fault.onBoard(FaultKind.OPEN_LEAD, Trigger.at(0)))
                .hasMessage("openLead needs a channel");
        assertThatThrownBy(() -> Fault.on(0, FaultKind.WARMING, Trigger.at(0)).with(Map.of("watt", 1.0)))
                .hasMessage("warming has no parameter watt");
        assertThatThrownBy(() -> Fault.on(0, FaultKind.WARMING, Trigger.at(0)).with(Map.of("watts", -1.0)))
                .hasMessageContaining("watts is -1.0, allowed is");
        assertThatThrownBy(() -> Trigger.at(-1)).hasMessageContaining("offset");
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void every_kind_has_a_scenario_name_that_leads_back_and_usual_strengths_it_allows(FaultKind kind) {
        assertThat(kind.scenarioName()).matches("[a-z]+([A-Z][a-z]*)*");
        assertThat(FaultKind.named(kind.scenarioName())).contains(kind);
        for (FaultParameter parameter : kind.parameters()) {
            assertThat(parameter.usual()).isBetween(parameter.lowest(), parameter.highest());
        }
    }
}
