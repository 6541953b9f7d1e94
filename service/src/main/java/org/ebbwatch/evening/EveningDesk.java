package org.ebbwatch.evening;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.SessionCounts;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.AlarmRequest;
import org.ebbwatch.alarm.AlarmRequests;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.evening.EveningCheck.State;
import org.ebbwatch.evening.EveningReply.Busy;
import org.ebbwatch.evening.EveningReply.Done;
import org.ebbwatch.evening.EveningReply.Over;
import org.ebbwatch.evening.EveningReply.Unknown;
import org.ebbwatch.evening.EveningReply.UnknownOutlet;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.store.EveningRow;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.time.HostTime;

/**
 * Runs evening checks, one at a time, and keeps what came of them. A check that nobody ends is over after an hour. Not
 * thread-safe: all calls are made under the rack's one lock.
 */
public final class EveningDesk implements EveningChecks {
    private static final long LONGEST_MILLIS = 3_600_000;

    private final RackWatch watch;
    private final BoardControl control;
    private final AlarmDesk alarms;
    private final AlarmRequests people;
    private final RackStorage storage;
    private final Supplier<UUID> ids;
    private final HostClock clock;
    private final FactGatherer gatherer;
    private EveningRun running;
    private String runningKey = "";
    private EveningCheck latest;

    /**
     * A desk at which no check runs.
     *
     * @param people by whom the test alarm is acknowledged
     * @param counts what was counted on the line to a board
     * @param freeBytes on the disk of the records
     */
    public EveningDesk(
            RackWatch watch,
            BoardControl control,
            AlarmDesk alarms,
            AlarmRequests people,
            RackStorage storage,
            Supplier<UUID> ids,
            HostClock clock,
            Function<String, SessionCounts> counts,
            LongSupplier freeBytes) {
        this.watch = watch;
        this.control = control;
        this.alarms = alarms;
        this.people = people;
        this.storage = storage;
        this.ids = ids;
        this.clock = clock;
        this.gatherer = new FactGatherer(watch, alarms, storage, clock, counts, freeBytes);
    }

    /** A scan of a board was read. */
    public void scanned(String board) {
        gatherer.scanned(board);
        if (running != null) {
            running.scanned(board);
        }
    }

    /** Lets time pass, some times a second. */
    public void tick() {
        if (running == null) {
            return;
        }
        running.look();
        acknowledgedElsewhere();
        long lasted = clock.now().monotonicMillisSince(running.started()).orElse(LONGEST_MILLIS);
        if (lasted >= LONGEST_MILLIS || running.awaits().isEmpty()) {
            end();
        }
    }

    /** Where there is one outlet, whoever acknowledged the test alarm had it by that. */
    private void acknowledgedElsewhere() {
        List<String> outlets = gatherer.outlets();
        if (outlets.size() == 1) {
            alarms.view().alarms().stream()
                    .filter(alarm -> alarm.kind() == AlarmKind.TEST && alarm.state() == AlarmState.ACKNOWLEDGED)
                    .forEach(alarm -> running.heard(outlets.get(0), alarm.acknowledgedBy()));
        }
    }

    @Override
    public EveningReply startEvening(String by, int touchMinutes, String key) {
        if (running != null) {
            return runningKey.equals(key) ? new Done(running.view()) : new Busy(running.view());
        }
        Optional<EveningCheck> before = begunBy(key);
        if (before.isPresent()) {
            return new Done(before.get());
        }
        HostTime now = clock.now();
        running = new EveningRun(ids.get(), by, touchMinutes, now, watch, control, gatherer);
        runningKey = key;
        String quality = now.wallQuality().name().toLowerCase(Locale.ROOT);
        storage.evenings()
                .insert(new EveningRow(
                        running.id(),
                        key,
                        by,
                        new WallLabel(now.wallMillis(), quality),
                        OptionalLong.empty(),
                        Optional.empty(),
                        running.passages(),
                        EveningJson.write(List.of())));
        alarms.test(true);
        return new Done(running.view());
    }

    /** Storage that is away must not keep anybody from checking: that it is away is what the check will say. */
    private Optional<EveningCheck> begunBy(String key) {
        try {
            return storage.evenings().find(key).map(this::check);
        } catch (StorageException e) {
            return Optional.empty();
        }
    }

    @Override
    public EveningReply heardBy(UUID check, String outlet, String by) {
        if (running == null || !running.id().equals(check)) {
            return evening(check).<EveningReply>map(Over::new).orElseGet(() -> new Unknown(check));
        }
        List<String> outlets = gatherer.outlets();
        if (!outlets.contains(outlet)) {
            return new UnknownOutlet(outlet, outlets);
        }
        running.heard(outlet, by);
        acknowledge(by);
        return new Done(running.view());
    }

    private void acknowledge(String by) {
        alarms.view().alarms().stream()
                .filter(alarm ->
                        alarm.kind() == AlarmKind.TEST && alarm.allowed().contains(AlarmStep.ACKNOWLEDGED))
                .findFirst()
                .ifPresent(alarm -> people.ask(acknowledged(alarm, by), "evening check " + ids.get()));
    }

    private static AlarmRequest acknowledged(AlarmView alarm, String by) {
        return new AlarmRequest(alarm.id(), alarm.sequence(), AlarmStep.ACKNOWLEDGED, by, "", 0);
    }

    @Override
    public EveningReply finishEvening(UUID check) {
        if (running != null && running.id().equals(check)) {
            return new Done(end());
        }
        return evening(check).<EveningReply>map(Done::new).orElseGet(() -> new Unknown(check));
    }

    private EveningCheck end() {
        EveningCheck last = running.view();
        List<Point> points = last.points();
        long now = clock.now().wallMillis();
        running = null;
        storage.evenings().end(last.id(), now, last.verdict().name(), EveningJson.write(points));
        alarms.test(false);
        latest = new EveningCheck(
                last.id(),
                State.ENDED,
                last.by(),
                last.startedWallMillis(),
                OptionalLong.of(now),
                last.verdict(),
                last.passages(),
                points,
                List.of());
        return latest;
    }

    @Override
    public Optional<EveningCheck> evening(UUID check) {
        if (running != null && running.id().equals(check)) {
            return Optional.of(running.view());
        }
        return latest != null && latest.id().equals(check)
                ? Optional.of(latest)
                : storage.evenings().find(check).map(this::check);
    }

    @Override
    public List<EveningCheck> evenings() {
        return storage.evenings().latest(TOLD).stream().map(this::check).toList();
    }

    private EveningCheck check(EveningRow row) {
        if (running != null && running.id().equals(row.id())) {
            return running.view();
        }
        List<Point> points = EveningJson.read(row.body());
        return new EveningCheck(
                row.id(),
                row.verdict().isPresent() ? State.ENDED : State.BROKEN_OFF,
                row.startedBy(),
                row.started().millis(),
                row.endedWallMillis(),
                row.verdict().map(Proof::valueOf).orElse(Proof.NOT_PROVEN),
                row.passages(),
                points,
                List.of());
    }
}
