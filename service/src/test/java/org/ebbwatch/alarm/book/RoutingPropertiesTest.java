package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.ebbwatch.judge.FindingKind.Urgency;

/** Whatever happens in whatever order, and whenever the service is started again. */
class RoutingPropertiesTest {
    private static final int PASSAGES = 4;
    private static final Duration AFTER = Duration.ofMinutes(30);

    /** Something that happens to one passage, then time that passes, and perhaps a restart. */
    record Happening(int passage, Set<AlarmKind> stands, boolean acknowledge, long millis, boolean restart) {}

    @Provide
    Arbitrary<List<Happening>> anything() {
        Arbitrary<Set<AlarmKind>> kinds = Arbitraries.of(
                        AlarmKind.HOT, AlarmKind.WARMING, AlarmKind.STALLED, AlarmKind.SENSOR_FAULT)
                .set()
                .ofMaxSize(2);
        return Combinators.combine(
                        Arbitraries.integers().between(0, PASSAGES - 1),
                        kinds,
                        Arbitraries.of(true, false, false),
                        Arbitraries.of(1_000L, 61_000L, 600_000L, 1_800_000L, 20_000_000L),
                        Arbitraries.of(true, false))
                .as(Happening::new)
                .list()
                .ofMaxSize(50);
    }

    private static RoutingBench rack() {
        var office = new LocalHours(LocalTime.of(8, 0), LocalTime.of(17, 0), ZoneOffset.UTC);
        return new RoutingBench()
                .with("all", Route.ALL)
                .with("office", new Route(Urgency.RINGING, Optional.of(office), Optional.empty()))
                .with("second", new Route(Urgency.RINGING, Optional.empty(), Optional.of(AFTER)));
    }

    private static void happen(RoutingBench rack, Happening happening) {
        rack.report(rack.bench.standing(happening.passage(), happening.stands().toArray(AlarmKind[]::new)));
        if (happening.acknowledge()) {
            rack.bench.book.alive().stream()
                    .filter(alarm -> alarm.allowed().contains(AlarmStep.ACKNOWLEDGED))
                    .findFirst()
                    .ifPresent(rack::acknowledge);
        }
        rack.pass(happening.millis());
    }

    @Property(tries = 300)
    void whoever_is_told_of_what_is_the_same_whenever_the_service_is_started_again(
            @ForAll("anything") List<Happening> happenings) {
        RoutingBench straight = rack();
        RoutingBench broken = rack();
        for (Happening happening : happenings) {
            happen(straight, happening);
            happen(broken, happening);
            if (happening.restart()) {
                broken.restart(0);
            }
        }
        assertThat(broken.told()).isEqualTo(straight.told());
    }

    @Property(tries = 300)
    void what_nobody_acknowledges_reaches_the_second_and_nothing_else_does(
            @ForAll("anything") List<Happening> happenings) {
        RoutingBench rack = rack();
        happenings.forEach(happening -> happen(rack, happening));
        rack.pass(2_000);
        rack.pass(Flood.STRETCH_MILLIS);
        rack.pass(AFTER.toMillis());

        for (Alarm alarm : rack.bench.book.alive()) {
            boolean told = rack.tellings.stream()
                    .anyMatch(telling -> telling.outlet().equals("second")
                            && telling.alarm().id().equals(alarm.id()));
            if (alarm.isUnheeded() && alarm.kind().urgency() != Urgency.ADVISORY) {
                assertThat(told).as(alarm.toString()).isTrue();
            }
        }
        rack.tellings.stream()
                .filter(telling -> telling.what().equals(Telling.ESCALATED))
                .forEach(telling -> {
                    long since = telling.alarm().unheededSinceWallMillis().orElseThrow();
                    assertThat(telling.at().wallMillis() - since).isGreaterThanOrEqualTo(AFTER.toMillis());
                });
    }
}
