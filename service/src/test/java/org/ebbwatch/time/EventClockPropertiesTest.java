package org.ebbwatch.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

class EventClockPropertiesTest {

    private static final long U32 = (1L << 32) - 1;

    record Event(
            long boot, long boardMillis, long scan, String hostBoot, long hostMillis, WallQuality quality, int act) {}

    @Provide
    Arbitrary<List<Event>> anything() {
        Arbitrary<Long> edgy = Arbitraries.oneOf(
                Arbitraries.longs().between(0, 20_000),
                Arbitraries.longs().between(0, U32),
                Arbitraries.longs().between(U32 - 20_000, U32));
        Arbitrary<Event> event = Combinators.combine(
                        Arbitraries.longs().between(0, 2),
                        edgy,
                        Arbitraries.oneOf(Arbitraries.longs().between(1, 12), edgy),
                        Arbitraries.of("host-1", "host-2"),
                        Arbitraries.longs().between(0, 10_000_000_000L),
                        Arbitraries.of(WallQuality.class),
                        Arbitraries.integers().between(0, 5))
                .as(Event::new);
        return event.list().ofMaxSize(40);
    }

    @Property
    void event_time_increases_strictly_whatever_comes(
            @ForAll("anything") List<Event> events,
            @ForAll boolean hasClock,
            @ForAll @IntRange(min = 1, max = 65_535) int speed,
            @ForAll @LongRange(min = 10, max = 60_000) long interval) {
        EventClock clock = EventClock.fresh();
        clock.pace(new BoardPace(hasClock, speed, interval));
        long last = -1;
        for (Event event : events) {
            switch (event.act) {
                case 0 -> clock.linkLost();
                case 1 -> clock.restartAnnounced();
                case 2 -> clock = clock.lastSeen() == null ? clock : restarted(clock, hasClock, speed, interval);
                default -> {}
            }
            HostTime host =
                    new HostTime(event.hostBoot, event.hostMillis * 1_000_000, event.hostMillis * 7, event.quality);
            Arrival arrival = clock.accept(event.boot, event.boardMillis, event.scan, host);
            if (arrival instanceof Arrival.Next next) {
                assertThat(next.eventMillis()).isGreaterThan(last);
                last = next.eventMillis();
            } else if (arrival instanceof Arrival.AfterGap after) {
                assertThat(after.eventMillis() - Math.max(0, last))
                        .isEqualTo(after.gap().leastMillis());
                last = after.eventMillis();
            }
            assertThat(clock.eventMillis()).isEqualTo(Math.max(0, last));
        }
    }

    private static EventClock restarted(EventClock clock, boolean hasClock, int speed, long interval) {
        EventClock next = EventClock.resumed(clock.lastSeen(), clock.eventMillis());
        next.pace(new BoardPace(hasClock, speed, interval));
        return next;
    }

    @Property
    void a_steady_board_keeps_its_own_time_from_any_start(
            @ForAll @LongRange(min = 0, max = (1L << 32) - 1) long start,
            @ForAll @LongRange(min = 10, max = 60_000) long interval,
            @ForAll @Size(min = 1, max = 50) List<@IntRange(min = 1, max = 3) Integer> steps) {
        EventClock clock = EventClock.fresh();
        clock.pace(BoardPace.real(interval));
        long elapsed = 0;
        long scan = 1;
        clock.accept(1, start, scan, host(0));
        for (int step : steps) {
            elapsed += step * interval;
            scan += step;
            assertThat(clock.accept(1, (start + elapsed) & U32, scan, host(elapsed)))
                    .isEqualTo(new Arrival.Next(elapsed));
        }
        assertThat(clock.rate().odd()).isFalse();
    }

    @Property
    void duplicates_change_nothing(
            @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 0, max = 2) Integer> copies,
            @ForAll @LongRange(min = 0, max = 1) long boot) {
        EventClock once = EventClock.fresh();
        EventClock often = EventClock.fresh();
        List<Arrival> arrivalsOnce = new ArrayList<>();
        List<Arrival> arrivalsOften = new ArrayList<>();
        long extra = 0;
        for (int i = 0; i < copies.size(); i++) {
            long millis = 1_000L * (i + 1);
            arrivalsOnce.add(once.accept(boot, millis, i + 1, host(millis)));
            arrivalsOften.add(often.accept(boot, millis, i + 1, host(millis)));
            for (int copy = 0; copy < copies.get(i); copy++, extra++) {
                assertThat(often.accept(boot, millis, i + 1, host(millis))).isEqualTo(new Arrival.Dropped());
            }
        }
        assertThat(arrivalsOften).isEqualTo(arrivalsOnce);
        assertThat(often.dropped()).isEqualTo(extra);
    }

    @Property
    void the_true_time_off_lies_within_the_gap(
            @ForAll @LongRange(min = 0, max = 100_000_000) long offMillis,
            @ForAll @LongRange(min = 0, max = 500) long delayBefore,
            @ForAll @LongRange(min = 0, max = 500) long delayAfter) {
        EventClock clock = EventClock.fresh();
        clock.pace(BoardPace.real(1_000));
        clock.accept(1, 5_000, 5, host(5_000 + delayBefore));
        long trueGap = offMillis + 1_000;
        Arrival.AfterGap after = (Arrival.AfterGap) clock.accept(2, 1_000, 1, host(5_000 + trueGap + delayAfter));
        assertThat(after.rebooted()).isTrue();
        assertThat(trueGap).isBetween(after.gap().leastMillis(), after.gap().mostMillis());
    }

    private static HostTime host(long millis) {
        return new HostTime("host", millis * 1_000_000, millis, WallQuality.KNOWN);
    }
}
