package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever cells do, one by one or together, with restarts at any moment. */
class GatheringPropertiesTest {
    private static final int CELLS = 8;

    /** How a cell may stand. */
    enum How {
        WELL,
        MILD,
        FAST,
        FAULTY
    }

    /** A cell turns, everything turns, time passes, somebody acknowledges, or the service starts again. */
    record Turn(int what, int cell, How how, long millis) {}

    @Provide
    Arbitrary<List<Turn>> nights() {
        Arbitrary<Turn> turn = Combinators.combine(
                        Arbitraries.integers().between(0, 11),
                        Arbitraries.integers().between(0, CELLS - 1),
                        Arbitraries.of(How.class),
                        Arbitraries.of(0L, 500L, 1_999L, 30_000L, 61_000L, 120_000L, 700_000L))
                .as(Turn::new);
        return turn.list().ofMinSize(10).ofMaxSize(60);
    }

    private BookBench bench;
    private final How[] cells = new How[CELLS];

    @Property
    void no_alarm_is_lost_and_every_condition_is_named_by_a_living_alarm(@ForAll("nights") List<Turn> turns) {
        bench = new BookBench();
        Arrays.fill(cells, How.WELL);
        for (Turn turn : turns) {
            turn(turn);
            assertThat(bench.book.alive()).extracting(Alarm::key).doesNotHaveDuplicates();
        }
        bench.pass(120_000);
        everyConditionIsNamed();
        nothingUnacknowledgedIsGone();
    }

    private void turn(Turn turn) {
        switch (turn.what) {
            case 0, 1, 2, 3, 4 -> {
                cells[turn.cell] = turn.how;
                bench.report(report(turn.cell));
            }
            case 5 -> {
                Arrays.fill(cells, turn.how);
                bench.report(all());
            }
            case 6, 7, 8 -> bench.pass(turn.millis);
            case 9 -> {
                List<Alarm> open = bench.book.alive().stream()
                        .filter(alarm -> alarm.state().isUnacknowledged())
                        .toList();
                if (!open.isEmpty()) {
                    bench.acknowledge(open.get(turn.cell % open.size()));
                }
            }
            default -> bench.restart(all());
        }
    }

    private Report[] all() {
        List<Report> all = new ArrayList<>();
        for (int n = 0; n < CELLS; n++) {
            all.add(report(n));
        }
        return all.toArray(Report[]::new);
    }

    private Report report(int n) {
        return switch (cells[n]) {
            case WELL -> bench.standing(n);
            case MILD -> bench.mild(n);
            case FAST -> bench.standing(n, AlarmKind.WARMING);
            case FAULTY -> bench.standing(n, AlarmKind.SENSOR_FAULT);
        };
    }

    private void everyConditionIsNamed() {
        for (int n = 0; n < CELLS; n++) {
            String tag = "cell " + n;
            AlarmKind kind = cells[n] == How.FAULTY ? AlarmKind.SENSOR_FAULT : AlarmKind.WARMING;
            boolean own = cells[n] == How.FAST;
            Subject subject = new Subject.Passage(BookBench.passage(n));
            if (cells[n] != How.WELL) {
                assertThat(bench.book.alive())
                        .as("%s of %s", cells[n], tag)
                        .anyMatch(alarm -> alarm.kind() == kind
                                && alarm.state().isActive()
                                && alarm.tags().contains(tag)
                                && (!own || alarm.subject().equals(subject)));
            }
        }
    }

    /** An alarm leaves the book only after somebody acknowledged it since it last rang. */
    private void nothingUnacknowledgedIsGone() {
        Map<UUID, AlarmEvent> lastOf = new HashMap<>();
        Map<UUID, Boolean> owed = new HashMap<>();
        for (AlarmEvent event : bench.events) {
            lastOf.put(event.alarm().id(), event);
            if (event.step() == AlarmStep.RAISED) {
                owed.put(event.alarm().id(), true);
            } else if (event.step() == AlarmStep.ACKNOWLEDGED) {
                owed.put(event.alarm().id(), false);
            }
        }
        lastOf.forEach((id, event) -> assertThat(event.alarm().isAlive() || !owed.getOrDefault(id, false))
                .as(event.toString())
                .isTrue());
        assertThat(bench.book.alive())
                .extracting(Alarm::id)
                .containsExactlyInAnyOrderElementsOf(lastOf.entrySet().stream()
                        .filter(entry -> entry.getValue().alarm().isAlive())
                        .map(Map.Entry::getKey)
                        .toList());
    }
}
