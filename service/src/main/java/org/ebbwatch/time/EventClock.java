package org.ebbwatch.time;

import java.util.Objects;
import java.util.OptionalLong;

/**
 * The event time of one board: milliseconds since the board was first seen, strictly increasing whatever arrives.
 *
 * <p>Within one boot the line follows the board's clock, unwrapped at 2^32. A wrap is told from a step back by the scan
 * number, which counts one for every interval: of all readings of the wrapped clock the one nearest to the counted time is
 * taken. A scan whose number is not above the last one of the same boot is dropped.
 *
 * <p>A new boot, a silence, or scans missing after a lost link make a {@link Gap}. The line moves on by the gap's least length.
 *
 * <p>A board without non-volatile memory always says boot 0. Its restart shows itself by scan numbers that begin again: one
 * scan that goes back may be a late one and is dropped, the next in order proves the restart. A clock that goes back while
 * scan numbers go on, or that lags more than {@value #LEAP_MILLIS} ms behind the host, proves it too.
 *
 * <p>At real speed a clock that leaps more than {@value #LEAP_MILLIS} ms ahead of the host's monotonic clock, or goes back, is
 * not followed: the line moves by the host's time and the clock counts as odd. At simulated speed nothing is compared with
 * the host, so that a busy machine finds nothing. The host's wall clock never moves the line unless board and host were both
 * restarted.
 *
 * <p>Not thread-safe.
 */
public final class EventClock {

    private static final long WRAP = 1L << 32;
    private static final long HALF_WRAP = 1L << 31;
    private static final long LEAP_MILLIS = 60_000;
    private static final long NO_SUSPECT = -1;

    private final ClockRate rate = new ClockRate();
    private BoardPace pace = BoardPace.real(1_000);
    private LastSeen last;
    private long eventMillis;
    private boolean seenBefore;
    private boolean linkLost;
    private boolean restartAnnounced;
    private long suspectScan = NO_SUSPECT;
    private long unwrappedMillis;
    private long dropped;

    private EventClock(LastSeen last, long eventMillis, boolean seenBefore) {
        this.last = last;
        this.eventMillis = eventMillis;
        this.seenBefore = seenBefore;
        this.linkLost = seenBefore;
    }

    /** The clock of a board never seen before: its first scan is at event time 0. */
    public static EventClock fresh() {
        return new EventClock(null, 0, false);
    }

    /**
     * The clock of a board seen before the service was restarted.
     *
     * @param floorMillis the latest event time kept of this board, where that is later than {@code last}
     */
    public static EventClock resumed(LastSeen last, long floorMillis) {
        Objects.requireNonNull(last, "last");
        return new EventClock(last, Math.max(last.eventMillis(), floorMillis), true);
    }

    /** The clock of a board of which only the latest event time is known: the gap has no upper bound. */
    public static EventClock resumed(long lastEventMillis) {
        return new EventClock(null, lastEventMillis, true);
    }

    /** Sets how the board's time goes; to be called for each identity before its scans. */
    public void pace(BoardPace newPace) {
        pace = Objects.requireNonNull(newPace, "newPace");
    }

    /** The link was lost: if scans are missing when it comes back, that is a gap. */
    public void linkLost() {
        linkLost = true;
    }

    /** The board says by itself that it was switched on: a scan number that goes back needs no second proof. */
    public void restartAnnounced() {
        restartAnnounced = true;
    }

    /** True for a scan that {@link #accept} would drop as repeated or late, of a board that counts its boots. */
    public boolean isRepeat(long bootNumber, long scan) {
        return last != null && bootNumber != 0 && bootNumber == last.bootNumber() && scansSince(scan) <= 0;
    }

    /**
     * Takes one complete scan.
     *
     * @param bootNumber 0 to 2^32 - 1, 0 for a board that cannot count its boots
     * @param boardMillis the board's clock, 0 to 2^32 - 1
     * @param scan the scan's number, 0 to 2^32 - 1
     * @param now when it arrived
     */
    public Arrival accept(long bootNumber, long boardMillis, long scan, HostTime now) {
        LastSeen before = last;
        if (before == null) {
            return firstSeen(bootNumber, boardMillis, scan, now);
        }
        if (bootNumber != before.bootNumber()) {
            return reboot(bootNumber, boardMillis, scan, now);
        }
        if (bootNumber == 0) {
            return withoutBootNumber(boardMillis, scan, now);
        }
        return scansSince(scan) <= 0 ? drop() : follow(bootNumber, boardMillis, scan, now);
    }

    /** Event time of the last scan accepted; that of the restart, or 0, before any. */
    public long eventMillis() {
        return eventMillis;
    }

    /** What to keep over a restart of the service; null before the first scan. */
    public LastSeen lastSeen() {
        return last;
    }

    /** Scans dropped because they were repeated or late. */
    public long dropped() {
        return dropped;
    }

    /** The comparison of the board's clock with the host's. */
    public ClockRate rate() {
        return rate;
    }

    private Arrival firstSeen(long bootNumber, long boardMillis, long scan, HostTime now) {
        if (seenBefore) {
            return afterGap(ElapsedBounds.unknown(1), false, bootNumber, boardMillis, scan, now);
        }
        seenBefore = true;
        accepted(0, bootNumber, boardMillis, scan, now);
        return new Arrival.Next(eventMillis);
    }

    private Arrival withoutBootNumber(long boardMillis, long scan, HostTime now) {
        boolean behind = scansSince(scan) <= 0;
        boolean provesRestart = suspectScan != NO_SUSPECT && scan == suspectScan + 1;
        if (provesRestart || (behind && restartAnnounced)) {
            return reboot(0, boardMillis, scan, now);
        }
        if (behind) {
            boolean sameAsLast = scan == last.scan() && boardMillis == last.boardMillis();
            suspectScan = sameAsLast ? suspectScan : scan;
            return drop();
        }
        return began(boardMillis, scan, now) ? reboot(0, boardMillis, scan, now) : follow(0, boardMillis, scan, now);
    }

    /** Whether a board without boot numbers restarted, although its scan number went on. */
    private boolean began(long boardMillis, long scan, HostTime now) {
        if (!pace.hasClock()) {
            return false;
        }
        long elapsed = unwrapped(boardMillis, scan);
        OptionalLong host = comparable(now);
        return elapsed < 0 || (host.isPresent() && elapsed + elapsed / 100 + LEAP_MILLIS < host.getAsLong());
    }

    private Arrival follow(long bootNumber, long boardMillis, long scan, HostTime now) {
        long scans = scansSince(scan);
        boolean missing = linkLost && scans > 1;
        if (!pace.hasClock()) {
            return followHost(bootNumber, boardMillis, scan, now, missing);
        }
        long elapsed = unwrapped(boardMillis, scan);
        OptionalLong host = comparable(now);
        if (host.isPresent() && leaps(elapsed, host.getAsLong())) {
            rate.leapt((double) elapsed / Math.max(1, host.getAsLong()));
            return afterGap(ElapsedBounds.between(last.host(), now, 1, 1), false, bootNumber, boardMillis, scan, now);
        }
        if (host.isPresent()) {
            unwrappedMillis += elapsed;
            rate.observe(unwrappedMillis, now.monotonicNanos() / 1_000_000);
        } else {
            rate.restart();
        }
        long moved = Math.max(1, elapsed);
        return missing || moved > pace.silenceMillis()
                ? afterGap(new Gap(moved, moved, GapBasis.BOARD_CLOCK), false, bootNumber, boardMillis, scan, now)
                : next(moved, bootNumber, boardMillis, scan, now);
    }

    /** The next scan of a board without a clock: stamped by the host, or by counting scans at simulated speed. */
    private Arrival followHost(long bootNumber, long boardMillis, long scan, HostTime now, boolean missing) {
        long counted = scansSince(scan) * pace.intervalMillis();
        OptionalLong host = comparable(now);
        long moved = Math.max(1, host.orElse(counted));
        if (!missing && moved <= pace.silenceMillis() && (host.isPresent() || !pace.realSpeed())) {
            return next(moved, bootNumber, boardMillis, scan, now);
        }
        long atLeast = host.isPresent() ? 1 : counted;
        Gap gap = ElapsedBounds.between(last.host(), now, pace.speed(), atLeast);
        return afterGap(gap, false, bootNumber, boardMillis, scan, now);
    }

    private Arrival reboot(long bootNumber, long boardMillis, long scan, HostTime now) {
        // Neither a clock that did not begin at 0 nor an interval changed since may raise the least length too far.
        long sincePowerOn = Math.max(0, scan - 1) * pace.intervalMillis();
        long atLeast = pace.hasClock() ? Math.min(boardMillis, sincePowerOn) : sincePowerOn;
        Gap gap = ElapsedBounds.between(last.host(), now, pace.speed(), atLeast);
        rate.restart();
        return afterGap(gap, true, bootNumber, boardMillis, scan, now);
    }

    private Arrival drop() {
        dropped++;
        return new Arrival.Dropped();
    }

    private Arrival next(long moved, long bootNumber, long boardMillis, long scan, HostTime now) {
        accepted(Math.max(1, moved - keptSinceLast()), bootNumber, boardMillis, scan, now);
        return new Arrival.Next(eventMillis);
    }

    private Arrival afterGap(
            Gap sinceLast, boolean rebooted, long bootNumber, long boardMillis, long scan, HostTime now) {
        Gap gap = sinceLast.shortenedBy(keptSinceLast());
        accepted(gap.leastMillis(), bootNumber, boardMillis, scan, now);
        return new Arrival.AfterGap(eventMillis, gap, rebooted);
    }

    /** Event time already kept beyond the last scan known, which happens only after a restart of the service. */
    private long keptSinceLast() {
        return last == null ? 0 : eventMillis - last.eventMillis();
    }

    private void accepted(long moved, long bootNumber, long boardMillis, long scan, HostTime now) {
        eventMillis += moved;
        last = new LastSeen(eventMillis, bootNumber, boardMillis, scan, now);
        linkLost = false;
        restartAnnounced = false;
        suspectScan = NO_SUSPECT;
    }

    /** Scans since the last one, by arithmetic modulo 2^32: negative for an older scan. */
    private long scansSince(long scan) {
        return (int) (scan - last.scan());
    }

    /** Board milliseconds since the last scan: of all that fit modulo 2^32, those nearest to the number of scans. */
    private long unwrapped(long boardMillis, long scan) {
        long wrapped = Math.floorMod(boardMillis - last.boardMillis(), WRAP);
        long counted = scansSince(scan) * pace.intervalMillis();
        return wrapped + Math.floorDiv(counted - wrapped + HALF_WRAP, WRAP) * WRAP;
    }

    /** Host milliseconds since the last scan, where host and board can be compared. */
    private OptionalLong comparable(HostTime now) {
        return pace.realSpeed() ? now.monotonicMillisSince(last.host()) : OptionalLong.empty();
    }

    private static boolean leaps(long elapsed, long hostMillis) {
        return elapsed < 0 || elapsed > hostMillis + hostMillis / 100 + LEAP_MILLIS;
    }
}
