package org.ebbwatch.passage;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.passage.CalibrationReply.GivenUp;
import org.ebbwatch.passage.CalibrationReply.Kept;
import org.ebbwatch.passage.CalibrationReply.Refused;
import org.ebbwatch.passage.CalibrationReply.Running;
import org.ebbwatch.passage.CalibrationReply.Why;
import org.ebbwatch.passage.KeptCalibration.Withdrawal;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.time.HostTime;

/**
 * Calibrates channels of a watched rack, one at a time. One that nobody goes on with for half an hour is given up. Not
 * thread-safe: all calls are made under the rack's one lock.
 */
public final class CalibrationDesk implements Calibrations {
    private static final long LONGEST_IDLE_MILLIS = 1_800_000;

    private final RackWatch watch;
    private final CalibrationBook book;
    private final Supplier<UUID> ids;
    private final HostClock clock;
    private ChannelRun running;
    private String runningKey = "";
    private HostTime lastAsked;

    public CalibrationDesk(RackWatch watch, RackStorage storage, Supplier<UUID> ids, HostClock clock) {
        this.watch = watch;
        this.book = new CalibrationBook(storage.calibrations());
        this.ids = ids;
        this.clock = clock;
        watch.calibratedBy(book::of);
        watch.afterEachScan(this::scanned);
    }

    private void scanned(String board) {
        if (running != null && running.board().equals(board)) {
            running.read(board(board));
        }
    }

    private void forgetIdle() {
        if (running != null
                && clock.now().monotonicMillisSince(lastAsked).orElse(LONGEST_IDLE_MILLIS) >= LONGEST_IDLE_MILLIS) {
            running = null;
        }
    }

    @Override
    public CalibrationReply beginCalibration(String board, int channel, Meter meter, String by, String key) {
        forgetIdle();
        if (running != null) {
            return runningKey.equals(key)
                    ? new Running(running.view())
                    : new Refused(
                            Why.BUSY,
                            running.by() + " calibrates channel " + running.channel() + " of board " + running.board()
                                    + ", run " + running.id() + ". Go on with that, or give it up.");
        }
        BoardWatch found = board(board);
        if (found == null) {
            return new Refused(
                    Why.UNKNOWN_BOARD,
                    "board cannot be \"" + board + "\"; there are "
                            + String.join(", ", watch.boards().keySet()) + '.');
        }
        Optional<Refused> unfit = unfit(found, channel);
        if (unfit.isPresent()) {
            return unfit.get();
        }
        running = new ChannelRun(ids.get(), found, channel, meter, by);
        runningKey = key;
        lastAsked = clock.now();
        return new Running(running.view());
    }

    private Optional<Refused> unfit(BoardWatch board, int channel) {
        if (!board.isKnown() || board.eventMillis() < 0) {
            return Optional.of(new Refused(Why.UNABLE, "The board " + board.name() + " has not been heard yet."));
        }
        if (channel >= board.channels() || !board.can(channel, Ability.VOLTS)) {
            return Optional.of(new Refused(
                    Why.UNABLE, "Channel " + channel + " of board " + board.name() + " measures no volts."));
        }
        return watch.passages()
                .on(board.name(), channel)
                .map(passage -> new Refused(
                        Why.TAKEN,
                        String.format(
                                Locale.ROOT,
                                "The cell %s is on channel %d in %s. Its leads must not be shorted, and other voltages would be"
                                        + " taken for its own. Calibrate before a cell is checked in, or after it is over.",
                                passage.card().cell().tag(),
                                channel,
                                passage.judge().phase())));
    }

    @Override
    public CalibrationReply takePoint(UUID run, CalibrationSpot spot, double shownVolts) {
        Optional<Refused> notNow = notGoingOn(run);
        if (notNow.isPresent()) {
            return notNow.get();
        }
        Optional<Refused> refused = running.take(spot, shownVolts, clock.now().wallMillis());
        return refused.<CalibrationReply>map(it -> it).orElseGet(() -> new Running(running.view()));
    }

    @Override
    public CalibrationReply keepCalibration(UUID run) {
        Optional<KeptCalibration> before = book.find(run);
        if (before.isPresent()) {
            return new Kept(before.get());
        }
        Optional<Refused> notNow = notGoingOn(run);
        if (notNow.isPresent()) {
            return notNow.get();
        }
        if (running.found().isEmpty()) {
            return new Refused(Why.NOT_NOW, "The point " + running.awaits().orElseThrow() + " is still to be taken.");
        }
        book.keep(running.found().get(), clock.now().wallQuality().name().toLowerCase(Locale.ROOT));
        watch.recalibrated(running.board());
        running = null;
        watch.settleNow();
        return new Kept(book.find(run).orElseThrow());
    }

    @Override
    public CalibrationReply giveUpCalibration(UUID run) {
        if (running != null && running.id().equals(run)) {
            running = null;
        }
        return new GivenUp();
    }

    @Override
    public CalibrationReply withdrawCalibration(UUID calibration, String by, String reason) {
        Optional<KeptCalibration> found = book.find(calibration);
        if (found.isEmpty()) {
            return new Refused(Why.UNKNOWN, "There is no calibration " + calibration + '.');
        }
        if (found.get().withdrawal().isEmpty()) {
            book.withdraw(calibration, new Withdrawal(clock.now().wallMillis(), by, reason));
            List.copyOf(watch.boards().keySet()).forEach(watch::recalibrated);
            watch.settleNow();
        }
        return new Kept(book.find(calibration).orElseThrow());
    }

    @Override
    public Optional<CalibrationRun> calibrationRun() {
        forgetIdle();
        return Optional.ofNullable(running).map(ChannelRun::view);
    }

    @Override
    public List<KeptCalibration> calibrations() {
        return book.newestFirst();
    }

    private Optional<Refused> notGoingOn(UUID run) {
        forgetIdle();
        if (running == null || !running.id().equals(run)) {
            return Optional.of(new Refused(
                    Why.UNKNOWN, "The calibration " + run + " is over, or there never was one. Begin another."));
        }
        lastAsked = clock.now();
        BoardWatch board = board(running.board());
        if (!running.isStill(board)) {
            running = null;
            return Optional.of(new Refused(
                    Why.UNABLE, "Another board is on the port now; the calibration was given up. Begin another."));
        }
        return unfit(board, running.channel());
    }

    private BoardWatch board(String name) {
        return watch.boards().get(name);
    }
}
