package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What looks like an empty cell and is none must not be released, whatever the board can check. */
class NeverReleasedTest {
    private static final long SIX_DAYS = Duration.ofDays(6).toMillis();

    static Stream<Arguments> leadsThatComeOff() {
        Stream.Builder<Arguments> all = Stream.builder();
        for (boolean leadCheck : new boolean[] {true, false}) {
            for (double resistorAcross : new double[] {0, 1}) {
                for (Trigger when : List.of(
                        Trigger.after(Happening.LOAD_CLOSED, hours(12)),
                        Trigger.after(Happening.LOAD_OPENED, 0),
                        Trigger.after(Happening.LOAD_OPENED, hours(3)),
                        Trigger.after(Happening.LOAD_OPENED, hours(23)),
                        Trigger.after(Happening.BONDED, hours(5)),
                        Trigger.after(Happening.PARTED, 600_000))) {
                    all.add(Arguments.of(when, leadCheck, resistorAcross));
                }
            }
        }
        return all.build();
    }

    @ParameterizedTest
    @MethodSource("leadsThatComeOff")
    void a_lead_that_comes_off_never_leads_to_a_release(Trigger when, boolean leadCheck, double resistorAcross) {
        Fault off = Fault.on(0, FaultKind.OPEN_LEAD, when).with(Map.of("resistorAcross", resistorAcross));
        var rack = rack(cell().done(), leadCheck, off);
        rack.run(() -> isOver(rack), SIX_DAYS);
        assertThat(rack.passage(0).phase())
                .as(rack.passage(0).past().toString())
                .isNotEqualTo(Phase.RELEASED);
    }

    @ParameterizedTest
    @MethodSource("boards")
    void a_sound_cell_is_released_on_the_same_board(boolean leadCheck) {
        var rack = rack(cell().done(), leadCheck);
        rack.run(() -> isOver(rack), SIX_DAYS);
        assertThat(rack.passage(0).phase())
                .as(rack.passage(0).past().toString())
                .isEqualTo(Phase.RELEASED);
    }

    static Stream<Boolean> boards() {
        return Stream.of(true, false);
    }

    @Test
    void a_load_that_stays_on_although_it_was_opened_never_leads_to_a_release() {
        var rack = rack(
                cell().done(), true, Fault.on(0, FaultKind.LOAD_STUCK, Trigger.after(Happening.LOAD_CLOSED, hours(1))));
        rack.run(() -> isOver(rack), SIX_DAYS);
        assertThat(rack.passage(0).phase()).isEqualTo(Phase.HELD);
        assertThat(rack.passage(0).reason())
                .containsAnyOf("something draws on the cell", "told from a load that is stuck", "load stuck");
    }

    @Test
    void a_full_cell_whose_disconnect_is_open_is_not_proven_and_gets_no_load() {
        var rack = rack(cell().arrival(Arrival.DISCONNECTED).done(), true);
        rack.run(() -> isOver(rack), SIX_DAYS);
        assertThat(rack.passage(0).phase()).isEqualTo(Phase.CHECK_IN);
        assertThat(rack.sim().truth(0).loadApplied()).isFalse();
    }

    @Test
    void a_cell_put_on_the_wrong_way_round_is_reversed_or_not_proven() {
        var rack = rack(cell().reversed().done(), true);
        rack.run(() -> isOver(rack), SIX_DAYS);
        assertThat(rack.passage(0).phase()).isIn(Phase.CHECK_IN, Phase.HELD);
        assertThat(rack.sim().truth(0).loadApplied()).isFalse();
    }

    @Test
    void a_full_cell_that_takes_the_place_of_a_resting_one_while_the_board_is_silent_is_noticed() {
        long silence = hours(30);
        var first = new StoryCell(cell().done(), 22, Optional.empty(), Set.of(), Set.of(), true);
        var second =
                new StoryCell(CellSpec.build("other", NMC, 2.0).done(), 22, Optional.empty(), Set.of(), Set.of(), true);
        var bench = new Bench(
                "board",
                List.of(first, second),
                List.of(
                        Fault.onBoard(FaultKind.SILENT, Trigger.at(silence)).lasting(hours(1)),
                        Fault.on(0, FaultKind.SWAPPED, Trigger.at(silence + 600_000))
                                .with(Map.of("with", 1.0))),
                true);
        var rack = new InProcessRack(bench, 5, 2_000);
        rack.step();
        rack.watch().checkIn("board", 0, first.card(), Procedure.careful(), 0);
        rack.run(() -> rack.sim().eventMillis() > silence + hours(2), SIX_DAYS);
        assertThat(rack.passage(0).phase())
                .as(rack.passage(0).past().toString())
                .isEqualTo(Phase.HELD);
        assertThat(rack.passage(0).reason()).contains("another cell?");
    }

    private static InProcessRack rack(CellSpec spec, boolean leadCheck, Fault... faults) {
        var cell = new StoryCell(spec, 22, Optional.empty(), Set.of(), Set.of(), true);
        var bench = new Bench("board", List.of(cell), List.of(faults), false, leadCheck);
        var rack = new InProcessRack(bench, 11, 2_000);
        rack.checkInAll(Procedure.careful());
        return rack;
    }

    private static CellSpec.Builder cell() {
        return CellSpec.build("cell", NMC, 2.0).slowShare(new SlowShare(0.0012, 60));
    }

    private static boolean isOver(InProcessRack rack) {
        Phase phase = rack.passage(0).phase();
        return phase.isOver() || phase == Phase.HELD;
    }

    private static long hours(long hours) {
        return Duration.ofHours(hours).toMillis();
    }
}
