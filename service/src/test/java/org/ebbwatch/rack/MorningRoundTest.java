package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.f4b6a3.uuid.UuidCreator;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.AlarmLinks;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.morning.MorningHour;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The morning report leaves like any message: written down first, at least once, and once a day. */
class MorningRoundTest {
    private static final NightHours NIGHT = NightHours.usual(ZoneOffset.UTC);
    private static final MorningHour SEVEN = new MorningHour(LocalTime.of(7, 0), ZoneOffset.UTC);

    @TempDir
    Path directory;

    private long wallMillis = Instant.parse("2026-11-24T20:00:00Z").toEpochMilli();
    private final HostClock clock = () -> new HostTime("host", wallMillis * 1_000_000, wallMillis, WallQuality.KNOWN);
    private final List<OutletMessage> delivered = new ArrayList<>();
    private StoredRack storage;
    private AlarmDesk desk;
    private Outbox asked;
    private Outbox other;
    private MorningRound round;

    @BeforeEach
    void open() {
        storage = StoredRack.open(directory);
        asked = new Outbox(
                new Receiver("mail"), (message, wall) -> storage.alarms().sent(message.id(), wall));
        other = new Outbox(
                new Receiver("buzzer"), (message, wall) -> storage.alarms().sent(message.id(), wall));
        var happenings = new Happenings(0);
        desk = new AlarmDesk(
                NIGHT,
                storage,
                Map.of(asked, Route.ALL, other, Route.ALL),
                AlarmLinks.NONE,
                UuidCreator::getTimeOrderedEpoch,
                clock,
                happenings);
        var watch = new RackWatch(storage, storage, new NoBoards(), UuidCreator::getTimeOrderedEpoch, desk, happenings);
        desk.resume(watch.standings());
        round = new MorningRound(SEVEN, Set.of("mail"), NIGHT, watch, desk, storage, clock);
    }

    @AfterEach
    void close() {
        storage.close();
    }

    private void tickAt(String time) throws InterruptedException {
        wallMillis = Instant.parse(time).toEpochMilli();
        round.tick();
        storage.flush();
        desk.committed();
        while (asked.attempt(clock.now()) == 0 || other.attempt(clock.now()) == 0) {
            // The next one.
        }
        storage.flush();
    }

    @Test
    void it_goes_at_its_hour_to_the_outlets_that_ask_for_it() throws InterruptedException {
        tickAt("2026-11-25T06:59:59Z");
        assertThat(delivered).isEmpty();

        tickAt("2026-11-25T07:00:00Z");
        assertThat(delivered).hasSize(1);
        assertThat(delivered.get(0).rings()).isFalse();
        assertThat(delivered.get(0).body())
                .contains("\"kind\":\"MORNING_REPORT\"", "\"text\":\"Morning report, Wed 25 Nov 2026 07:00\\n");
        assertThat(storage.mornings().lastDay("2026-11-26")).contains("2026-11-25");
        assertThat(storage.alarms().unsent("buzzer")).isEmpty();
    }

    @Test
    void it_goes_once_a_day_and_a_restart_sends_none_twice() throws InterruptedException {
        tickAt("2026-11-25T07:00:00Z");
        tickAt("2026-11-25T07:00:01Z");
        close();
        open();
        tickAt("2026-11-25T09:00:00Z");
        assertThat(delivered).hasSize(1);

        tickAt("2026-11-26T07:00:00Z");
        assertThat(delivered).hasSize(2);
        assertThat(delivered).extracting(OutletMessage::number).containsExactly(1L, 2L);
    }

    private final class Receiver implements Outlet {
        private final String name;

        Receiver(String name) {
            this.name = name;
        }

        @Override
        public String name() {
            return name;
        }

        @Override
        public Delivery deliver(OutletMessage message) {
            delivered.add(message);
            return new Taken();
        }
    }

    private static final class NoBoards implements BoardControl {
        @Override
        public void setLoad(String board, int channel, boolean closed) {}

        @Override
        public void openAllLoads(String board) {}

        @Override
        public boolean checkLead(String board, int channel) {
            return false;
        }

        @Override
        public boolean blink(String board, int channel, int seconds) {
            return false;
        }
    }
}
