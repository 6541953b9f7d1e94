package org.ebbwatch.night;

import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Outcome.Wished;
import org.ebbwatch.judge.Phase;

/** When one passage got how far, in event time. */
final class Course {
    private static final long NEVER = -1;
    private static final double MILLIS_PER_HOUR = 3.6e6;

    private long loadOnMillis = NEVER;
    private long firstHeldDownMillis = NEVER;
    private long restMillis = NEVER;
    private long restedMillis = NEVER;
    private long bondedMillis = NEVER;
    private long watchedMillis = NEVER;
    private long releasedMillis = NEVER;
    private int drains;
    private int holds;

    void sees(long millis, Outcome.Event event) {
        if (event instanceof PhaseChanged changed) {
            entered(millis, changed.to());
        } else if (event instanceof Wished wished) {
            wished(millis, wished.wish());
        }
    }

    private void entered(long millis, Phase to) {
        switch (to) {
            case DRAIN -> {
                drains++;
                loadOnMillis = first(loadOnMillis, millis);
            }
            case REST -> {
                firstHeldDownMillis = first(firstHeldDownMillis, millis);
                restMillis = millis;
                restedMillis = NEVER;
            }
            case TIE_OFF -> {
                bondedMillis = millis;
                watchedMillis = NEVER;
            }
            case HELD -> holds++;
            case RELEASED -> releasedMillis = millis;
            default -> {}
        }
    }

    private void wished(long millis, Wish wish) {
        switch (wish) {
            case ASK_TAKE_OFF -> firstHeldDownMillis = first(firstHeldDownMillis, millis);
            case ASK_TIE_OFF -> restedMillis = first(restedMillis, millis);
            case ASK_PART -> watchedMillis = first(watchedMillis, millis);
            default -> {}
        }
    }

    private static long first(long before, long now) {
        return before == NEVER ? now : before;
    }

    /** Hours from the load to a rest that was passed and not taken back; infinite where there was none. */
    double hoursToRested() {
        return hours(loadOnMillis, restedMillis);
    }

    double hoursToReleased() {
        return hours(loadOnMillis, releasedMillis);
    }

    /** Hours from the load to the end of the first hold. */
    double drainHours() {
        return hours(loadOnMillis, firstHeldDownMillis);
    }

    /** Hours the last rest took until it was passed. */
    double restHours() {
        return hours(restMillis, restedMillis);
    }

    /** Hours the last watch took until the bond could be parted. */
    double watchHours() {
        return hours(bondedMillis, watchedMillis);
    }

    private static double hours(long from, long to) {
        return from == NEVER || to == NEVER ? Double.POSITIVE_INFINITY : (to - from) / MILLIS_PER_HOUR;
    }

    /** How often it went on its load again. */
    int returns() {
        return Math.max(0, drains - 1);
    }

    /** How often a person had to decide. */
    int timesHeld() {
        return holds;
    }
}
