package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;
import static org.ebbwatch.judge.PassageBench.seconds;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.Wish;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class HeldTest {

    /** Every lock, and a cell that has run into it. */
    private static final Map<String, Supplier<PassageBench>> LOCKED = Map.of(
            "HOT", () -> PassageBench.switched().draining().celsius(61).watch(seconds(2)),
            "REVERSED",
                    () -> PassageBench.switched()
                            .draining()
                            .collapsesTo(-0.1, -0.1)
                            .watch(seconds(4)),
            "CUT_OFF",
                    () -> PassageBench.switched()
                            .draining()
                            .drainedTo(2.6, 2.4)
                            .collapsesTo(0, 0)
                            .watch(seconds(2)),
            "LEAD_OPEN",
                    () -> PassageBench.switched()
                            .draining()
                            .leadChecked(LeadProof.OPEN)
                            .watch(seconds(2)),
            "LOAD_HOT", () -> PassageBench.switched().draining().bank(120).watch(seconds(2)),
            "HELD",
                    () -> PassageBench.switched()
                            .draining()
                            .drainedTo(0.4, 0.15)
                            .watch(hours(337)),
            "a suspected swap",
                    () -> PassageBench.switched()
                            .draining()
                            .emptied()
                            .watch(hours(6))
                            .gap(hours(1))
                            .cell(3.9, 3.8)
                            .watch(minutes(15)));

    @TestFactory
    List<DynamicTest> no_load_closes_by_itself_after() {
        return LOCKED.entrySet().stream()
                .map(lock -> DynamicTest.dynamicTest(lock.getKey(), () -> {
                    PassageBench bench = lock.getValue().get();
                    assertThat(bench.phase()).isEqualTo(Phase.HELD);
                    assertThat(bench.judge().isLocked()).isTrue();

                    bench.forgetEvents()
                            .celsius(22)
                            .bank(Double.NaN)
                            .swapFor(3.7, 3.6)
                            .watch(hours(2));

                    assertThat(bench.wishes()).doesNotContain(Wish.CLOSE_LOAD);
                    assertThat(bench.phase()).isEqualTo(Phase.HELD);
                }))
                .toList();
    }

    @TestFactory
    List<DynamicTest> no_load_closes_after_a_restart_of_the_board_with() {
        return LOCKED.entrySet().stream()
                .map(lock -> DynamicTest.dynamicTest(lock.getKey(), () -> {
                    PassageBench bench = lock.getValue().get();

                    bench.forgetEvents().gap(minutes(2)).reboot().watch(hours(1));

                    assertThat(bench.wishes()).doesNotContain(Wish.CLOSE_LOAD);
                    assertThat(bench.isLoaded()).isFalse();
                }))
                .toList();
    }

    @Nested
    class A_held_cell {

        @Test
        void keeps_the_load_it_had_in_DRAIN_unless_the_finding_opens_it() {
            PassageBench bench = PassageBench.switched().draining().drainedTo(2.6, 2.4);

            bench.collapsesTo(0, 0).watch(minutes(5));

            assertThat(bench.standing()).contains(FindingKind.CUT_OFF);
            assertThat(bench.isLoaded()).isTrue();
        }

        @Test
        void may_have_its_load_taken_off_by_a_person() {
            PassageBench bench =
                    PassageBench.switched().draining().drainedTo(0.4, 0.15).watch(hours(337));
            assertThat(bench.judge().allowed()).containsExactlyInAnyOrder(Act.WITHDRAW, Act.DRAIN_AGAIN, Act.TAKE_OFF);

            bench.act(Act.TAKE_OFF).watch(minutes(5));

            assertThat(bench.isLoaded()).isFalse();
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void is_told_when_it_comes_back_but_stays_held() {
            PassageBench bench = PassageBench.handLoaded()
                    .draining()
                    .celsius(61)
                    .watch(seconds(2))
                    .act(Act.TAKE_OFF);

            bench.watch(seconds(20));

            assertThat(bench.standing()).contains(FindingKind.REBOUND);
            assertThat(bench.phase()).isEqualTo(Phase.HELD);
        }

        @Test
        void goes_to_DRAIN_by_a_person_only_and_what_locked_it_is_cleared() {
            PassageBench bench = PassageBench.switched()
                    .draining()
                    .leadChecked(LeadProof.OPEN)
                    .watch(minutes(1));
            assertThat(bench.phase()).isEqualTo(Phase.HELD);

            bench.act(Act.DRAIN_AGAIN).watch(minutes(2));

            assertThat(bench.phase()).isEqualTo(Phase.DRAIN);
            assertThat(bench.isLoaded()).isTrue();
            assertThat(bench.standing()).isEmpty();
        }

        @Test
        void needs_the_whole_rest_again_after_a_lead_came_off_in_it() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .watch(hours(23))
                    .lead(BenchChannel.Lead.OFF_ACROSS_RESISTOR)
                    .watch(minutes(1))
                    .lead(BenchChannel.Lead.ATTACHED)
                    .act(Act.DRAIN_AGAIN)
                    .watch(hours(12))
                    .watch(minutes(5));

            assertThat(bench.phase()).isEqualTo(Phase.REST);
            assertThat(bench.judge().remainingMillis()).isGreaterThan(hours(23).toMillis());
        }

        @Test
        void whose_lead_is_put_back_in_a_gap_is_still_the_same_cell() {
            PassageBench bench = PassageBench.switched()
                    .resting()
                    .lead(BenchChannel.Lead.OFF_ACROSS_RESISTOR)
                    .watch(minutes(1))
                    .gap(hours(1))
                    .lead(BenchChannel.Lead.ATTACHED)
                    .watch(minutes(5));

            assertThat(bench.standing()).contains(FindingKind.LEAD_OPEN);
            assertThat(bench.judge().allowed()).contains(Act.DRAIN_AGAIN);
        }

        @Test
        void can_be_withdrawn() {
            for (Supplier<PassageBench> lock : LOCKED.values()) {
                PassageBench bench = lock.get().act(Act.WITHDRAW).watch(seconds(2));
                assertThat(bench.phase()).isEqualTo(Phase.WITHDRAWN);
            }
        }
    }

    /** What a person may do, situation by situation; everything else is refused. */
    private static final Map<String, Situation> SITUATIONS = Map.ofEntries(
            situation("just checked in", PassageBench::switched, Act.PUT_ON, Act.WITHDRAW),
            situation("draining, switched", () -> PassageBench.switched().draining(), Act.TAKE_OFF, Act.WITHDRAW),
            situation(
                    "draining, by hand",
                    () -> PassageBench.handLoaded().draining(),
                    Act.PUT_ON,
                    Act.TAKE_OFF,
                    Act.WITHDRAW),
            situation("resting", () -> PassageBench.switched().resting(), Act.SPARK, Act.WITHDRAW),
            situation("rested", () -> PassageBench.switched().rested(), Act.TIE_OFF, Act.SPARK, Act.WITHDRAW),
            situation("tied off", () -> PassageBench.switched().tiedOff(), Act.SPARK, Act.WITHDRAW),
            situation("soaked", () -> PassageBench.switched().soaked(), Act.PART, Act.SPARK, Act.WITHDRAW),
            situation("parted", () -> PassageBench.switched().parted(), Act.SPARK, Act.WITHDRAW),
            situation("releasable", () -> PassageBench.switched().releasable(), Act.RELEASE, Act.SPARK, Act.WITHDRAW),
            situation(
                    "held, not proven",
                    () -> PassageBench.switched().cell(0, 0).checkedIn().act(Act.PUT_ON),
                    Act.WITHDRAW),
            situation("held, hot", LOCKED.get("HOT"), Act.WITHDRAW),
            situation("held, reversed", LOCKED.get("REVERSED"), Act.WITHDRAW),
            situation("held, lead open", LOCKED.get("LEAD_OPEN"), Act.DRAIN_AGAIN, Act.WITHDRAW),
            situation("held, cut off, load kept", LOCKED.get("CUT_OFF"), Act.TAKE_OFF, Act.WITHDRAW),
            situation("released", () -> PassageBench.switched().releasable().act(Act.RELEASE)),
            situation("withdrawn", () -> PassageBench.switched().act(Act.WITHDRAW)));

    private record Situation(Supplier<PassageBench> bench, Set<Act> allowed) {}

    private static Map.Entry<String, Situation> situation(String name, Supplier<PassageBench> bench, Act... allowed) {
        EnumSet<Act> acts = EnumSet.noneOf(Act.class);
        acts.addAll(List.of(allowed));
        return Map.entry(name, new Situation(bench, acts));
    }

    @TestFactory
    List<DynamicTest> what_a_person_may_do_and_that_all_else_is_refused_and_changes_nothing() {
        return SITUATIONS.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    PassageBench bench = entry.getValue().bench().get();
                    assertThat(bench.judge().allowed())
                            .isEqualTo(entry.getValue().allowed());

                    EnumSet<Act> refused = EnumSet.allOf(Act.class);
                    refused.removeAll(bench.judge().allowed());
                    for (Act act : refused) {
                        refusesAndChangesNothing(bench, act);
                    }
                }))
                .toList();
    }

    private static void refusesAndChangesNothing(PassageBench bench, Act act) {
        String before = picture(bench.judge());
        Outcome outcome = bench.judge().fold(new Entry.Acted(bench.millis(), act));
        assertThat(outcome.events()).as("%s", act).isEmpty();
        assertThat(picture(bench.judge())).as("%s", act).isEqualTo(before);
    }

    private static String picture(Judge judge) {
        return String.join(
                "|",
                judge.phase().name(),
                judge.reason(),
                judge.findings().toString(),
                judge.allowed().toString(),
                judge.standingWishes().toString(),
                Boolean.toString(judge.isLoadWanted()),
                Integer.toString(judge.round()),
                Long.toString(judge.remainingMillis()));
    }
}
