package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.draining;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.ebbwatch.alarm.ForgetfulReceiver.Manners;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.passage.PassageStanding;
import org.junit.jupiter.api.Test;

/**
 * Outlets that are away, answers that are lost, a service that is killed: everything arrives, by each outlet in order, at least once,
 * and repetitions have the id of the first.
 */
class EveryAlarmArrivesTest {
    private static final int PASSAGES = 4;
    private static final long HOUR = 3_600_000;
    private static final List<FindingKind> OF_EACH_HOUR = List.of(
            FindingKind.HOT,
            FindingKind.REVERSED,
            FindingKind.CUT_OFF,
            FindingKind.STALLED,
            FindingKind.TIE_LOOSE,
            FindingKind.WARMING,
            FindingKind.REBOUND,
            FindingKind.HOT);

    /** Records, receivers that outlive the service, and the service of the moment. */
    private static final class World implements AutoCloseable {
        private final Path folder;
        private final HandClock clock = new HandClock();
        private final List<ForgetfulReceiver> receivers =
                List.of(new ForgetfulReceiver("first"), new ForgetfulReceiver("second"));
        private final Map<Integer, FindingKind> stands = new TreeMap<>();
        private int runs;
        private DeskBench service;

        World() throws IOException {
            folder = Files.createTempDirectory("outbox");
            begin();
        }

        private Path records() {
            return folder.resolve("run " + runs);
        }

        private void begin() {
            Map<ForgetfulReceiver, Route> ways = new LinkedHashMap<>();
            receivers.forEach(receiver -> ways.put(receiver, Route.ALL));
            service = new DeskBench(records(), clock, ways);
            service.desk.resume(standings());
        }

        private List<PassageStanding> standings() {
            return IntStream.range(0, PASSAGES).mapToObj(this::standing).toList();
        }

        private PassageStanding standing(int passage) {
            FindingKind kind = stands.get(passage);
            return kind == null ? draining(passage) : draining(passage, kind);
        }

        void stands(int passage, FindingKind kind) {
            stands.put(passage, kind);
            service.changed(standing(passage));
        }

        void gone(int passage) {
            stands.remove(passage);
            service.changed(standing(passage));
        }

        void acknowledgeOne() {
            service.desk.view().alarms().stream()
                    .filter(alarm -> alarm.allowed().contains(AlarmStep.ACKNOWLEDGED))
                    .findFirst()
                    .ifPresent(alarm -> service.acknowledge(alarm.kind(), "Anna"));
        }

        void pass(long millis) {
            service.pass(millis);
            service.deliver();
        }

        /** Kills the service and starts it over what is on disk. */
        void kill() {
            Path left = records();
            runs++;
            Crash.copy(left, records());
            service.close();
            begin();
        }

        /** All receivers are well again; the time until the longest pause is over passes. */
        void recover() {
            receivers.forEach(receiver -> receiver.becomes(Manners.WELL));
            pass(300_000);
            pass(300_000);
        }

        /** Each message goes to each outlet, so numbers go round. */
        List<Long> expected(int receiver) {
            return LongStream.rangeClosed(1, service.table.lastNumber())
                    .filter(number -> (number - 1) % receivers.size() == receiver)
                    .boxed()
                    .toList();
        }

        @Override
        public void close() throws IOException {
            service.close();
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }

    private static void everythingArrived(World world) {
        for (int n = 0; n < world.receivers.size(); n++) {
            ForgetfulReceiver receiver = world.receivers.get(n);
            assertThat(receiver.inOrder()).isEqualTo(world.expected(n));
            Map<Long, Set<String>> texts = receiver.received().stream()
                    .collect(Collectors.groupingBy(
                            OutletMessage::number,
                            Collectors.mapping(message -> message.id() + message.body(), Collectors.toSet())));
            assertThat(texts.values()).as("a repetition is the same").allMatch(same -> same.size() == 1);
        }
        assertThat(world.service.desk.view().outlets()).allMatch(outlet -> outlet.pending() == 0);
    }

    @Test
    void an_outlet_is_down_for_eight_hours_and_the_service_is_killed_three_times_meanwhile() throws IOException {
        try (World world = new World()) {
            ForgetfulReceiver down = world.receivers.get(0);
            ForgetfulReceiver well = world.receivers.get(1);
            world.stands(0, FindingKind.WARMING);
            world.pass(1_000);
            assertThat(down.inOrder()).containsExactly(1L);

            down.becomes(Manners.AWAY);
            for (int hour = 0; hour < 8; hour++) {
                world.stands(hour % PASSAGES, OF_EACH_HOUR.get(hour));
                world.pass(HOUR / 2);
                if (hour == 1 || hour == 4 || hour == 6) {
                    world.kill();
                }
                world.pass(HOUR / 2);
            }
            assertThat(down.received()).hasSize(1);
            assertThat(well.inOrder()).as("the other outlet did not wait").isEqualTo(world.expected(1));

            down.becomes(Manners.ANSWER_LOST);
            world.pass(300_000);
            world.kill();
            world.recover();

            everythingArrived(world);
            assertThat(down.received())
                    .as("one came again")
                    .hasSizeGreaterThan(down.inOrder().size());
            assertThat(world.expected(0)).hasSizeGreaterThan(9);
        }
    }

    /** Something that happens; which fields count depends on what. */
    record Event(What what, int which, FindingKind kind, Manners manners, long millis) {
        enum What {
            STANDS,
            GONE,
            ACKNOWLEDGED,
            PASSES,
            RECEIVER,
            KILLED
        }
    }

    @Provide
    Arbitrary<List<Event>> anything() {
        return Combinators.combine(
                        Arbitraries.of(Event.What.class),
                        Arbitraries.integers().between(0, PASSAGES - 1),
                        Arbitraries.of(FindingKind.HOT, FindingKind.WARMING, FindingKind.REVERSED, FindingKind.STALLED),
                        Arbitraries.of(Manners.class),
                        Arbitraries.of(0L, 1_000L, 61_000L, HOUR, 9 * HOUR))
                .as(Event::new)
                .list()
                .ofMinSize(5)
                .ofMaxSize(30);
    }

    @Property(tries = 15)
    void whatever_happens_everything_arrives(@ForAll("anything") List<Event> events) throws IOException {
        try (World world = new World()) {
            events.forEach(event -> happen(world, event));
            world.recover();
            everythingArrived(world);
        }
    }

    private static void happen(World world, Event event) {
        switch (event.what()) {
            case STANDS -> world.stands(event.which(), event.kind());
            case GONE -> world.gone(event.which());
            case ACKNOWLEDGED -> world.acknowledgeOne();
            case PASSES -> world.pass(event.millis());
            case RECEIVER -> world.receivers.get(event.which() % 2).becomes(event.manners());
            case KILLED -> world.kill();
        }
    }
}
