package org.ebbwatch.evening;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.SessionCounts;
import org.ebbwatch.alarm.AlarmDesk;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.outlet.OutletView;
import org.ebbwatch.evening.rule.AlarmFacts;
import org.ebbwatch.evening.rule.BoardFacts;
import org.ebbwatch.evening.rule.CellFacts;
import org.ebbwatch.evening.rule.CellFacts.Switching;
import org.ebbwatch.evening.rule.EveningRules.Facts;
import org.ebbwatch.evening.rule.HostFacts;
import org.ebbwatch.evening.rule.OutletFacts;
import org.ebbwatch.evening.rule.TouchProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardGlance;
import org.ebbwatch.passage.PassageGlance;
import org.ebbwatch.passage.RackStorage;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.time.WallQuality;

/** Gathers what is known of rack, host, alarms and outlets. Not thread-safe: called under the rack's lock. */
final class FactGatherer {
    private static final long NIGHT_MILLIS = 16 * 3_600_000L;
    private static final long BYTES_A_READING = 48;
    private static final long BYTES_BESIDES = 200L << 20;

    private final RackWatch watch;
    private final AlarmDesk alarms;
    private final RackStorage storage;
    private final HostClock clock;
    private final Function<String, SessionCounts> counts;
    private final LongSupplier freeBytes;
    private final PortLog ports = new PortLog();

    FactGatherer(
            RackWatch watch,
            AlarmDesk alarms,
            RackStorage storage,
            HostClock clock,
            Function<String, SessionCounts> counts,
            LongSupplier freeBytes) {
        this.watch = watch;
        this.alarms = alarms;
        this.storage = storage;
        this.clock = clock;
        this.counts = counts;
        this.freeBytes = freeBytes;
    }

    /** A scan of a board was read. */
    void scanned(String board) {
        long eventMillis = watch.eventMillis(board);
        if (ports.isDue(board, eventMillis)) {
            watch.boardGlances().stream()
                    .filter(glance -> glance.name().equals(board))
                    .forEach(glance -> ports.add(board, sample(glance)));
        }
    }

    private PortLog.Sample sample(BoardGlance board) {
        return PortLog.Sample.of(watch.eventMillis(board.name()), counts.apply(board.name()), board.losses());
    }

    /** Everything, as the check found it so far. */
    Facts facts(Map<String, BoardRound> rounds, Map<String, String> heardBy, long sinceWallMillis) {
        AlarmsView view = alarms.view();
        List<PassageGlance> glances = watch.glances();
        return new Facts(
                glances.stream()
                        .map(glance -> cell(
                                glance,
                                Optional.ofNullable(rounds.get(glance.card().board()))))
                        .toList(),
                watch.boardGlances().stream()
                        .map(board -> board(board, glances))
                        .toList(),
                view.outlets().stream()
                        .map(outlet -> outlet(outlet, heardBy, sinceWallMillis, isTestWaiting(outlet.name(), view)))
                        .toList(),
                view.alarms().stream()
                        .filter(alarm -> alarm.kind() != AlarmKind.TEST)
                        .map(FactGatherer::alarm)
                        .toList(),
                host());
    }

    List<String> outlets() {
        return alarms.view().outlets().stream().map(OutletView::name).toList();
    }

    static CellFacts cell(PassageGlance glance, Optional<BoardRound> round) {
        UUID id = glance.card().id();
        Scan reading = glance.reading().orElse(null);
        double limit = glance.card().procedure().drain().limitVolts();
        boolean holding = reading != null && reading.volts() + reading.expandedVolts() < limit;
        return new CellFacts(
                id,
                glance.card().cell().tag(),
                glance.phase(),
                switching(glance),
                glance.loadOn(),
                glance.drew(),
                glance.mayClose(),
                glance.phase() == Phase.DRAIN && holding,
                glance.bonded(),
                glance.recovered(),
                glance.findings(),
                round.flatMap(its -> its.lead(id)),
                reading == null ? Double.NaN : reading.celsius(),
                reading == null ? Double.NaN : reading.ambientCelsius(),
                round.flatMap(its -> its.answer(id)),
                round.flatMap(its -> its.touch(id)).map(TouchProof::riseKelvin).orElse(OptionalDouble.empty()));
    }

    private static Switching switching(PassageGlance glance) {
        if (!glance.switched()) {
            return Switching.HANDS;
        }
        boolean wasOfString = glance.card().cell().string().isPresent();
        return glance.inString() || wasOfString ? Switching.STRING : Switching.BOARD;
    }

    private BoardFacts board(BoardGlance board, List<PassageGlance> glances) {
        PortLog.Sample lately = ports.sinceOldest(board.name(), sample(board));
        double limit = glances.stream()
                .filter(glance -> glance.card().board().equals(board.name()))
                .mapToDouble(glance -> glance.card().procedure().heat().ambientCelsius())
                .min()
                .orElse(Procedure.careful().heat().ambientCelsius());
        return new BoardFacts(
                board.name(),
                board.heard(),
                board.detail(),
                board.clockOdd(),
                board.ambientCelsius(),
                limit,
                lately.eventMillis(),
                lately.losses(),
                lately.silences(),
                lately.scans(),
                lately.bad(),
                board.calibrations().size(),
                oldCalibrations(board));
    }

    private List<String> oldCalibrations(BoardGlance board) {
        long now = clock.now().wallMillis();
        return board.calibrations().stream()
                .filter(calibration -> calibration.isOld(now))
                .map(calibration -> "channel " + calibration.channel() + " " + calibration.ageDays(now) + " days")
                .toList();
    }

    /** Whether the message that rings of the test alarm has not reached its receiver; a later one may wait behind it. */
    private boolean isTestWaiting(String outlet, AlarmsView view) {
        Set<UUID> tests = view.alarms().stream()
                .filter(alarm -> alarm.kind() == AlarmKind.TEST)
                .map(AlarmView::id)
                .collect(Collectors.toSet());
        try {
            return storage.alarms().unsent(outlet).stream()
                    .anyMatch(message -> message.rings() && tests.contains(message.alarm()));
        } catch (StorageException e) {
            return true;
        }
    }

    private static OutletFacts outlet(
            OutletView outlet, Map<String, String> heardBy, long sinceWallMillis, boolean waiting) {
        boolean delivered = !waiting
                && outlet.failures() == 0
                && outlet.lastSuccessWallMillis().orElse(Long.MIN_VALUE) >= sinceWallMillis;
        return new OutletFacts(
                outlet.name(),
                outlet.pending(),
                outlet.lastError(),
                delivered,
                heardBy.getOrDefault(outlet.name(), ""));
    }

    private static AlarmFacts alarm(AlarmView alarm) {
        String subject = alarm.tags().isEmpty() ? alarm.subject() : String.join(", ", alarm.tags());
        return new AlarmFacts(alarm.kind(), subject, alarm.state(), alarm.cover());
    }

    private HostFacts host() {
        long needed = BYTES_BESIDES;
        for (BoardGlance board : watch.boardGlances()) {
            if (board.intervalMillis() > 0) {
                needed += NIGHT_MILLIS / board.intervalMillis() * board.channels() * BYTES_A_READING;
            }
        }
        boolean known = clock.now().wallQuality() == WallQuality.KNOWN;
        return new HostFacts(
                known, freeBytes.getAsLong(), needed, trouble(), watch.view().unwatched());
    }

    /** Asks the database itself, for one that is not used does not say that it is gone. */
    private String trouble() {
        try {
            storage.evenings().latest(1);
            return storage.trouble().orElse("");
        } catch (StorageException e) {
            return "the database does not answer: " + e.getMessage();
        }
    }
}
