package org.ebbwatch.judge;

import java.util.EnumSet;
import java.util.Set;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.WatchClock;

/**
 * How long the cell has been watched in its phase, and what a person is asked to do because of it. Nobody watches while
 * the sensors are at fault, the board is silent or its clock is odd; a cell that warms is watched from the start again.
 */
final class Watch {
    private static final Set<Wish> VERDICTS =
            Set.copyOf(EnumSet.of(Wish.ASK_TIE_OFF, Wish.ASK_PART, Wish.ASK_RELEASE, Wish.ASK_METER));
    private static final Set<Wish> NEED_AN_UNBROKEN_WATCH = Set.copyOf(EnumSet.of(Wish.ASK_PART, Wish.ASK_RELEASE));

    private final FindingBook findings;
    private final SensorWatch sensors;
    private final WatchClock clock = new WatchClock();
    private final Set<Wish> asked = EnumSet.noneOf(Wish.class);

    Watch(FindingBook findings, SensorWatch sensors) {
        this.findings = findings;
        this.sensors = sensors;
    }

    /** Another phase: nothing watched, nothing asked. */
    void begin() {
        clock.restart();
        asked.clear();
    }

    /** Another watch in the same phase; how long it has been unbroken goes on. */
    void next() {
        clock.next();
        asked.clear();
    }

    /** Starts again from nothing. */
    void restart() {
        clock.restart();
        takeBackVerdicts();
    }

    /**
     * Counts one scan.
     *
     * @param needed the quantity without which nothing was seen; one missed reading counts nothing and breaks nothing
     */
    void count(Reading now, double needed, Phase phase) {
        if (sensors.isFaulty() || findings.stands(FindingKind.CLOCK_ODD)) {
            breakOff();
        } else if (findings.stands(FindingKind.WARMING) && phase != Phase.DRAIN) {
            restart();
        } else if (!Double.isNaN(needed) && !Double.isNaN(sensors.celsius())) {
            clock.run(now.stepMillis());
        }
    }

    /** A stretch nobody watches. */
    void breakOff() {
        clock.pause();
        asked.removeAll(NEED_AN_UNBROKEN_WATCH);
    }

    /** Whether it has lasted {@code wholeMillis}, the last {@code unbrokenMillis} of it without a break. */
    boolean hasLasted(long wholeMillis, long unbrokenMillis) {
        return remainingMillis(wholeMillis, unbrokenMillis) == 0;
    }

    long remainingMillis(long wholeMillis, long unbrokenMillis) {
        long whole = wholeMillis - clock.elapsedMillis();
        return Math.max(0, Math.max(whole, unbrokenMillis - clock.unbrokenMillis()));
    }

    /** Asks a person once, until it is taken back. */
    void ask(Wish wish) {
        if (asked.add(wish)) {
            findings.wish(wish);
        }
    }

    void takeBack(Wish wish) {
        asked.remove(wish);
    }

    void takeBackVerdicts() {
        asked.removeAll(VERDICTS);
    }

    boolean isAsked(Wish wish) {
        return asked.contains(wish);
    }

    Set<Wish> asked() {
        return Set.copyOf(asked);
    }

    /** Whether the cell is seen and nothing about it is in doubt. */
    boolean isSeen() {
        return !Double.isNaN(sensors.celsius())
                && !sensors.isFaulty()
                && !findings.stands(FindingKind.CLOCK_ODD)
                && !findings.stands(FindingKind.SILENT)
                && !findings.stands(FindingKind.WARMING);
    }
}
