package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.ebbwatch.judge.BenchChannel.Lead;
import org.ebbwatch.judge.BenchChannel.LeadChecks;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.Procedure;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A person who does whatever may be done and drains again whatever may be drained again, a cell, and one mishap at any time:
 * what is released is empty and was seen.
 */
class MishapTest {
    private static final int JOURNEYS = 30;
    private static final List<LeadChecks> LEAD_CHECKS = List.of(LeadChecks.values());
    private static final Duration LONGEST = hours(60);

    private enum Mishap {
        NONE,
        LEAD_OFF_ACROSS_RESISTOR,
        LEAD_OFF_FLOATING,
        LEAD_OFF_SINKING,
        FULL_CELL_SWAPPED_IN,
        FULL_CELL_SWAPPED_IN_A_GAP,
        FULL_CELL_BEHIND_AN_OPEN_DISCONNECT,
        LOAD_WELDED,
        RESISTOR_BROKEN,
        BOARD_STUCK,
        SENSOR_LOST,
        BOARD_RESTARTS,
        SLOW_CELL
    }

    private static void happens(Mishap mishap, PassageBench bench, Random random) {
        double level = random.nextDouble() * 0.4;
        int gap = 1 + random.nextInt(40);
        switch (mishap) {
            case NONE -> {}
            case LEAD_OFF_ACROSS_RESISTOR -> bench.lead(Lead.OFF_ACROSS_RESISTOR);
            case LEAD_OFF_FLOATING -> bench.floating(after -> level * (1 - Math.exp(-after / 600)));
            case LEAD_OFF_SINKING -> bench.floating(after -> level * Math.exp(-after / 3000));
            case FULL_CELL_SWAPPED_IN -> bench.swapFor(3.9, 3.8);
            case FULL_CELL_SWAPPED_IN_A_GAP -> bench.gap(minutes(gap)).swapFor(3.9, 3.8);
            case FULL_CELL_BEHIND_AN_OPEN_DISCONNECT -> bench.full().reads(0.0004);
            case LOAD_WELDED -> bench.contactWelded();
            case RESISTOR_BROKEN -> bench.resistorBroken();
            case BOARD_STUCK -> bench.boardIgnoresLoadCommands();
            case SENSOR_LOST -> bench.celsius(Double.NaN);
            case BOARD_RESTARTS -> bench.gap(minutes(gap)).reboot();
            case SLOW_CELL ->
                bench.recoveringOver(1_800 + random.nextInt(7_200)).cell(1.2, 0.03);
        }
    }

    @ParameterizedTest
    @EnumSource(Mishap.class)
    void never_releases_a_cell_that_is_not_empty_and_seen(Mishap mishap) {
        Map<Phase, Integer> ends = new EnumMap<>(Phase.class);
        for (int seed = 0; seed < JOURNEYS; seed++) {
            PassageBench bench = journey(mishap, new Random(seed));
            ends.merge(bench.phase(), 1, Integer::sum);
            if (bench.phase() == Phase.RELEASED) {
                assertThat(bench.isEmptyAndSeen())
                        .as("%s, seed %d, released", mishap, seed)
                        .isTrue();
            }
        }
        boolean harmless = mishap == Mishap.NONE || mishap == Mishap.BOARD_RESTARTS;
        assertThat(ends.getOrDefault(Phase.RELEASED, 0) == JOURNEYS)
                .as("%s leaves all to be released: %s", mishap, ends)
                .isEqualTo(harmless);
    }

    private static PassageBench journey(Mishap mishap, Random random) {
        PassageBench bench = PassageBench.of(
                random.nextBoolean() ? PassageBench.switchedCell() : PassageBench.handLoadedCell(), shortened());
        bench.leadChecks(LEAD_CHECKS.get(random.nextInt(LEAD_CHECKS.size())));
        bench.checkedIn().cell(0.15 + random.nextDouble() * 0.3, 0.02 + random.nextDouble() * 0.06);
        bench.recoveringOver(60 + random.nextInt(1_200));
        double when = mishap == Mishap.SLOW_CELL ? 0 : random.nextDouble();
        long mishapMillis = bench.millis() + (long) (when * hours(9).toMillis());
        long endMillis = bench.millis() + LONGEST.toMillis();
        boolean happened = false;
        while (bench.millis() < endMillis) {
            obey(bench);
            if (bench.phase().isOver()) {
                return bench;
            }
            if (!happened && bench.millis() >= mishapMillis) {
                happens(mishap, bench, random);
                happened = true;
            }
            bench.watch(minutes(2), 4_000);
        }
        return bench;
    }

    /** Does everything that is asked for, and drains again whenever that is allowed. */
    private static void obey(PassageBench bench) {
        Judge judge = bench.judge();
        if (judge.standingWishes().contains(Wish.ASK_METER)) {
            bench.meter(bench.trueVolts());
        }
        for (Act act : new Act[] {Act.RELEASE, Act.PART, Act.TIE_OFF, Act.DRAIN_AGAIN}) {
            if (judge.allowed().contains(act)) {
                bench.act(act);
                return;
            }
        }
        if (judge.standingWishes().contains(Wish.ASK_PUT_ON)) {
            bench.act(Act.PUT_ON);
        } else if (judge.standingWishes().contains(Wish.ASK_TAKE_OFF)) {
            bench.act(Act.TAKE_OFF);
        }
    }

    /** The careful procedure with an hour for a day. */
    private static Procedure shortened() {
        Procedure careful = Procedure.careful();
        return new Procedure(
                "shortened",
                1,
                new Procedure.Drain(1.0, 0.10, hours(1).toMillis(), hours(48).toMillis()),
                new Procedure.Rest(0.50, hours(3).toMillis(), minutes(10).toMillis()),
                new Procedure.TieOff(
                        hours(2).toMillis(), hours(1).toMillis(), minutes(60).toMillis(), hours(6).toMillis(), 0.02),
                careful.heat(),
                careful.plausible());
    }
}
