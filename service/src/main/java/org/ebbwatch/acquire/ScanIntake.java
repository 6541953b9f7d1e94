package org.ebbwatch.acquire;

import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.time.Arrival;
import org.ebbwatch.time.BoardPace;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;

/** Makes whole scans on event time of a proven board's readings, and finds its silences. */
final class ScanIntake {

    private static final long LEAST_SILENCE_HOST_MILLIS = 5_000;
    private static final long INTERVAL_BEFORE_IDENTITY_MILLIS = 1_000;

    private final String board;
    private final EventClock clock;
    private final BoardListener listener;
    private final LinkMeter meter;
    private BoardPace pace = BoardPace.real(INTERVAL_BEFORE_IDENTITY_MILLIS);
    private ScanAssembly assembly;
    private long lastScanSeen;
    private long heardMillis;
    private boolean heardSinceStart;
    private boolean silenceTold;
    private boolean oddTold;
    private boolean restartAnnounced;
    private boolean untoldRestart;

    private long scans;
    private long partialBefore;
    private long repeatedParts;
    private long misfits;
    private long silences;
    private long gaps;

    ScanIntake(String board, EventClock clock, BoardListener listener, LinkMeter meter) {
        this.meter = meter;
        this.board = board;
        this.clock = clock;
        this.listener = listener;
    }

    /** Readings to come are those of this board in this boot; {@code seenScan} is the last of its scans that was seen, 0 for none. */
    void begin(Identity identity, long seenScan) {
        end();
        boolean hasClock = identity.clockKind() != ClockKind.NONE;
        pace = new BoardPace(hasClock, identity.speed(), identity.intervalMillis());
        clock.pace(pace);
        assembly = new ScanAssembly(identity.channels().size());
        LastSeen last = clock.lastSeen();
        boolean sameBoot = last != null && last.bootNumber() == identity.bootNumber() && last.bootNumber() != 0;
        lastScanSeen = seenScan == 0 && sameBoot ? last.scan() : seenScan;
    }

    /** True once after a restart of the board that no identity had told. */
    boolean takeUntoldRestart() {
        boolean was = untoldRestart;
        untoldRestart = false;
        return was;
    }

    /** Gives up a scan begun, because the link was lost or the board restarted. */
    void end() {
        if (assembly != null) {
            assembly.abandon();
            partialBefore += assembly.partial();
            assembly = null;
        }
    }

    void linkLost() {
        end();
        clock.linkLost();
    }

    void restartAnnounced() {
        restartAnnounced = true;
        clock.restartAnnounced();
    }

    void intervalChanged(long intervalMillis) {
        pace = new BoardPace(pace.hasClock(), pace.speed(), intervalMillis);
        clock.pace(pace);
    }

    BoardPace pace() {
        return pace;
    }

    long lastScanSeen() {
        return lastScanSeen;
    }

    /** Takes a part of a scan; true where it made one whole that was handed on. */
    boolean take(ReadingsView view, HostTime now, long attendedMillis) {
        if (clock.isRepeat(view.bootNumber(), view.scan())) {
            repeatedParts++;
            return false;
        }
        ScanAssembly.Outcome outcome = assembly.add(view);
        if (outcome == ScanAssembly.Outcome.MISFIT) {
            misfits++;
        }
        if (outcome != ScanAssembly.Outcome.COMPLETE) {
            return false;
        }
        long lastEventMillis = clock.eventMillis();
        Arrival arrival = clock.accept(view.bootNumber(), view.boardMillis(), view.scan(), now);
        if (arrival instanceof Arrival.AfterGap after) {
            tellGap(after, lastEventMillis, view.bootNumber());
            return handOn(view, attendedMillis);
        }
        return arrival instanceof Arrival.Next && handOn(view, attendedMillis);
    }

    /** Looks whether the board has fallen silent. */
    void watch(long attendedMillis) {
        if (!silenceTold && attendedMillis - heardMillis >= silenceHostMillis()) {
            tellSilence(clock.eventMillis());
        }
    }

    /** True from a silence to the next scan. */
    boolean silent() {
        return silenceTold;
    }

    /** How often scans were missing. */
    long gaps() {
        return gaps;
    }

    SessionCounts counts(long unattributedFrames, long unexpectedAnswers, long badFrames) {
        long partial = partialBefore + (assembly == null ? 0 : assembly.partial());
        long repeated = repeatedParts + clock.dropped();
        return new SessionCounts(
                scans, partial, repeated, unattributedFrames, misfits, unexpectedAnswers, badFrames, silences);
    }

    private void tellGap(Arrival.AfterGap after, long lastEventMillis, long bootNumber) {
        gaps++;
        meter.gap();
        if (heardSinceStart && !silenceTold && after.gap().leastMillis() > pace.silenceMillis()) {
            tellSilence(lastEventMillis);
        }
        if (after.rebooted()) {
            untoldRestart = bootNumber == 0 && !restartAnnounced;
            listener.rebooted(board, bootNumber);
        }
        listener.gap(board, after.gap());
    }

    private boolean handOn(ReadingsView view, long attendedMillis) {
        scans++;
        restartAnnounced = false;
        lastScanSeen = view.scan();
        heardMillis = attendedMillis;
        heardSinceStart = true;
        silenceTold = false;
        boolean odd = clock.rate().odd();
        if (odd != oddTold) {
            oddTold = odd;
            listener.clockOdd(board, clock.rate().ratio(), odd);
        }
        BoardScan scan = assembly.scan();
        if (pace.realSpeed() && pace.hasClock()) {
            meter.scan(clock.lastSeen());
        }
        scan.stamp(clock.lastSeen(), assembly.contacts(), assembly.amperesPresent());
        listener.scan(board, scan);
        return true;
    }

    private void tellSilence(long eventMillis) {
        silenceTold = true;
        silences++;
        listener.silent(board, eventMillis);
    }

    private long silenceHostMillis() {
        return pace.realSpeed()
                ? pace.silenceMillis()
                : Math.max(LEAST_SILENCE_HOST_MILLIS, pace.silenceMillis() / pace.speed());
    }
}
