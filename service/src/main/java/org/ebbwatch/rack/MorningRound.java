package org.ebbwatch.rack;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.RackNotice;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.morning.MorningFacts;
import org.ebbwatch.morning.MorningHour;
import org.ebbwatch.morning.MorningReport;
import org.ebbwatch.morning.MorningText;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.plan.Plan;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.time.HostTime;

/** Makes the morning report when it is due, and has it sent, once a day. Used under the rack's lock. */
final class MorningRound {
    /** The kind of its messages. */
    static final String KIND = "MORNING_REPORT";

    private static final long PAUSE_NANOS = 60_000_000_000L;

    private final MorningHour hour;
    private final Set<String> outlets;
    private final NightHours night;
    private final RackWatch watch;
    private final AlarmDesk desk;
    private final RackStorage storage;
    private final HostClock clock;
    private final long begunWallMillis;
    private Optional<LocalDate> last;
    private long triedNanos;

    MorningRound(
            MorningHour hour,
            Set<String> outlets,
            NightHours night,
            RackWatch watch,
            AlarmDesk desk,
            RackStorage storage,
            HostClock clock) {
        this.hour = hour;
        this.outlets = Set.copyOf(outlets);
        this.night = night;
        this.watch = watch;
        this.desk = desk;
        this.storage = storage;
        this.clock = clock;
        this.begunWallMillis = clock.now().wallMillis();
        this.last = storage.mornings()
                .lastDay(hour.tomorrow(begunWallMillis).toString())
                .map(LocalDate::parse);
        this.triedNanos = clock.now().monotonicNanos() - PAUSE_NANOS;
    }

    /** Sends the report if it is due; to be followed by a commit. While the records cannot be read it is tried once a minute. */
    void tick() {
        HostTime now = clock.now();
        Optional<LocalDate> day = hour.due(now.wallMillis(), last, begunWallMillis);
        if (day.isPresent() && now.monotonicNanos() - triedNanos >= PAUSE_NANOS) {
            triedNanos = now.monotonicNanos();
            send(day.get(), now);
            last = day;
        }
    }

    private void send(LocalDate day, HostTime now) {
        long evening = MorningHour.eveningBefore(night, now.wallMillis());
        RackView view = watch.view();
        MorningReport report = MorningReport.of(new MorningFacts(
                view,
                Plan.of(view, night, now.wallMillis()),
                desk.view().alarms(),
                desk.raisedSince(evening),
                evening,
                now.wallMillis()));
        String text = MorningText.of(report, night.zone());
        String quality = now.wallQuality().name().toLowerCase(Locale.ROOT);
        storage.mornings().insert(day.toString(), text, new WallLabel(now.wallMillis(), quality));
        desk.send(new RackNotice(KIND, MorningText.inShort(report), text), outlets);
    }
}
