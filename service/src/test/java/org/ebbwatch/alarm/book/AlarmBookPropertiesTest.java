package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.BookBench.ANNA;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.ebbwatch.alarm.book.AlarmAnswer.Done;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.ebbwatch.judge.FindingKind.Urgency;

/** Whatever happens in whatever order. */
class AlarmBookPropertiesTest {
    private static final int PASSAGES = 6;

    /** One thing that happens; what the numbers mean depends on it. */
    record Happening(int what, int which, Set<AlarmKind> kinds, long millis) {}

    @Provide
    Arbitrary<List<Happening>> anything() {
        Arbitrary<Set<AlarmKind>> kinds = Arbitraries.of(
                        AlarmKind.HOT,
                        AlarmKind.WARMING,
                        AlarmKind.SENSOR_FAULT,
                        AlarmKind.SILENT,
                        AlarmKind.AMBIENT_HIGH,
                        AlarmKind.STALLED,
                        AlarmKind.LOAD_HOT,
                        AlarmKind.HELD)
                .set()
                .ofMaxSize(3);
        Arbitrary<Happening> happening = Combinators.combine(
                        Arbitraries.integers().between(0, 11),
                        Arbitraries.integers().between(0, 1000),
                        kinds,
                        Arbitraries.of(1L, 30_000L, 61_000L, 3_600_000L, 30_000_000L))
                .as(Happening::new);
        return happening.list().ofMaxSize(80);
    }

    private BookBench bench;
    private final Map<Integer, Set<AlarmKind>> standing = new HashMap<>();
    private final Map<String, Long> begun = new HashMap<>();

    @Property
    void no_alarm_that_nobody_acknowledged_is_lost_and_none_has_a_twin(@ForAll("anything") List<Happening> happenings) {
        bench = new BookBench();
        standing.clear();
        begun.clear();
        for (Happening happening : happenings) {
            int before = bench.events.size();
            boolean night = NightHours.usual(ZoneOffset.UTC).isNight(bench.wallMillis);
            happen(happening);
            boolean stillNight = NightHours.usual(ZoneOffset.UTC).isNight(bench.wallMillis);
            noTwins();
            everyConditionHasItsActiveAlarm();
            if (night && stillNight) {
                noAdvisoryRang(bench.events.subList(before, bench.events.size()));
            }
        }
        everyStepFollowsTheOneBefore();
        nobodyLeftUnacknowledged();
        everyAlarmIsToldByDay();
    }

    private void happen(Happening happening) {
        List<Alarm> alive = bench.book.alive();
        UUID id = alive.isEmpty()
                ? new UUID(1, 1)
                : alive.get(happening.which % alive.size()).id();
        Moment now = bench.now();
        switch (happening.what) {
            case 0, 1, 2 -> report(happening.which % PASSAGES, happening.kinds);
            case 3 -> {
                List<Report> all = new ArrayList<>();
                for (int n = 0; n < PASSAGES; n++) {
                    standing.put(n, EnumSet.copyOf(plus(standing.getOrDefault(n, Set.of()), happening.kinds)));
                    all.add(current(n));
                }
                bench.report(all.toArray(Report[]::new));
            }
            case 4 -> {
                standing.remove(happening.which % PASSAGES);
                bench.report(bench.over(happening.which % PASSAGES));
            }
            case 5, 6 -> bench.pass(happening.millis);
            case 7 -> keep(bench.book.acknowledge(id, ANNA, now));
            case 8 -> keep(bench.book.reset(id, ANNA, now));
            case 9 ->
                keep(bench.book.shelve(id, ANNA, "busy", Duration.ofMillis(Math.max(60_000, happening.millis)), now));
            case 10 ->
                keep(
                        happening.which % 2 == 0
                                ? bench.book.takeOutOfService(id, ANNA, "busy", now)
                                : bench.book.putBackInService(id, ANNA, now));
            default -> restart();
        }
    }

    private static Set<AlarmKind> plus(Set<AlarmKind> some, Set<AlarmKind> more) {
        Set<AlarmKind> all = EnumSet.noneOf(AlarmKind.class);
        all.addAll(some);
        all.addAll(more);
        return all;
    }

    private void report(int n, Set<AlarmKind> kinds) {
        standing.put(n, kinds);
        bench.report(current(n));
    }

    private Report current(int n) {
        return bench.standing(n, standing.getOrDefault(n, Set.of()).toArray(AlarmKind[]::new));
    }

    private void restart() {
        List<Alarm> living = bench.book.alive();
        bench.book = bench.newBook();
        bench.events.addAll(bench.book.resume(
                living, standing.keySet().stream().map(this::current).toList(), bench.now()));
        assertThat(bench.book.alive()).extracting(Alarm::id).containsAll(unacknowledged(living));
    }

    private static List<UUID> unacknowledged(List<Alarm> alarms) {
        return alarms.stream()
                .filter(alarm -> alarm.state().isUnacknowledged())
                .map(Alarm::id)
                .toList();
    }

    private void keep(AlarmAnswer answer) {
        if (answer instanceof Done done) {
            bench.events.add(done.event());
        }
    }

    private boolean waits(int n, AlarmKind kind) {
        Long since = begun.get(kind + " " + n);
        boolean gathers = kind == AlarmKind.SENSOR_FAULT || kind == AlarmKind.HELD;
        return gathers && since != null && bench.monotonicMillis - since < 2_000;
    }

    private void remember() {
        Map<String, Long> now = new HashMap<>();
        standing.forEach((n, kinds) -> kinds.forEach(
                kind -> now.put(kind + " " + n, begun.getOrDefault(kind + " " + n, bench.monotonicMillis))));
        begun.clear();
        begun.putAll(now);
    }

    private void noTwins() {
        assertThat(bench.book.alive()).extracting(Alarm::key).doesNotHaveDuplicates();
    }

    private void everyConditionHasItsActiveAlarm() {
        remember();
        standing.forEach((n, kinds) -> kinds.forEach(kind -> {
            if (!waits(n, kind)) {
                assertThat(bench.book.alive())
                        .as("%s on passage %s", kind, n)
                        .anyMatch(alarm -> alarm.kind() == kind
                                && alarm.state().isActive()
                                && alarm.tags().contains("cell " + n));
            }
        }));
    }

    private static void noAdvisoryRang(List<AlarmEvent> events) {
        assertThat(events)
                .filteredOn(event -> event.alarm().kind().urgency() == Urgency.ADVISORY)
                .noneMatch(AlarmEvent::rings);
    }

    private void everyStepFollowsTheOneBefore() {
        Map<UUID, Alarm> last = new HashMap<>();
        for (AlarmEvent event : bench.events) {
            Alarm before = last.put(event.alarm().id(), event.alarm());
            assertThat(event.before()).isEqualTo(before == null ? Standing.NOTHING : before.standing());
            assertThat(event.alarm().steps()).isEqualTo(before == null ? 1 : before.steps() + 1);
        }
        Set<UUID> alive = new HashSet<>();
        last.values().stream().filter(Alarm::isAlive).forEach(alarm -> alive.add(alarm.id()));
        assertThat(bench.book.alive()).extracting(Alarm::id).containsExactlyInAnyOrderElementsOf(alive);
    }

    /** An alarm that is over was acknowledged after it last wanted to be; a latched one was reset at last. */
    private void nobodyLeftUnacknowledged() {
        Map<UUID, Boolean> owed = new HashMap<>();
        Map<UUID, AlarmEvent> last = new HashMap<>();
        for (AlarmEvent event : bench.events) {
            boolean wants = event.step() == AlarmStep.RAISED || (event.rings() && event.step() != AlarmStep.TOLD);
            boolean person = event.step() == AlarmStep.ACKNOWLEDGED;
            owed.compute(event.alarm().id(), (id, before) -> wants || (!person && Boolean.TRUE.equals(before)));
            last.put(event.alarm().id(), event);
        }
        last.forEach((id, event) -> {
            if (!event.alarm().isAlive()) {
                assertThat(owed.get(id)).as(event.toString()).isFalse();
                assertThat(!event.alarm().kind().isLatched() || event.step() == AlarmStep.RESET)
                        .as(event.toString())
                        .isTrue();
            }
        });
    }

    private void everyAlarmIsToldByDay() {
        bench.wallMillis = BookBench.NOON;
        bench.pass(Duration.ofHours(24).toMillis());
        for (Alarm alarm : bench.book.alive()) {
            if (alarm.cover() == Cover.OUT_OF_SERVICE) {
                keep(bench.book.putBackInService(alarm.id(), ANNA, bench.now()));
            }
        }
        bench.pass(1000);
        bench.pass(Flood.STRETCH_MILLIS);
        assertThat(bench.book.alive()).allMatch(Alarm::told);
    }
}
