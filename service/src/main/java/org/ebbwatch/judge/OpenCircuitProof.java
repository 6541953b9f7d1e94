package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Outcome.Wish;

/**
 * The two proofs without which an open-circuit voltage near zero means nothing: that nothing shorts the cell (the voltage
 * recovered after the load or the bond came off, and stands there still) and that the channel is attached to it (the board's
 * lead check, or a meter that agrees on a voltage that is not zero).
 *
 * <p>With the load off a cell's voltage does not drop within minutes: a drop means a lead came off.
 */
final class OpenCircuitProof {
    private static final double LEAST_DROP_VOLTS = 0.010;
    private static final double DROP_FRACTION = 0.05;
    private static final double NOISE_DROP_FACTOR = 1.5;
    private static final double FORGET_MILLIS = 1_800_000;
    private static final double BEGUN_FACTOR = 2;
    private static final double METER_FRACTION = 0.02;
    private static final double METER_FAR_VOLTS = 0.1;
    private static final double METER_FAR_FRACTION = 0.1;
    private static final long METER_FRESH_MILLIS = 3_600_000;
    private static final long CHECK_FRESH_MILLIS = 120_000;
    private static final long ANSWER_MILLIS = 60_000;
    private static final long CHECK_EVERY_MILLIS = 1_800_000;
    private static final int MOST_UNANSWERED = 5;
    private static final long CONFIRM_AFTER_MILLIS = 600_000;
    private static final long CONFIRM_MILLIS = 180_000;
    private static final long UNPROVEN_CHECK_MILLIS = 3_000_000;
    private static final long NEVER = Long.MIN_VALUE / 2;

    private final FindingBook findings;
    private final FineRecovery fine;

    private double startVolts = Double.NaN;
    private double leastRecoveryVolts;
    private double smoothVolts = Double.NaN;
    private double highestVolts = Double.NaN;
    private double expandedVolts = Double.NaN;
    private double recoveredVolts;
    private double neededVolts;
    private long watchedMillis;
    private double differenceVolts;
    private boolean recovered;
    private boolean anew;
    private boolean atOnce;

    private boolean pending;
    private boolean boardCannotCheck;
    private int unanswered;
    private long risenMillis = NEVER;
    private long askedMillis = NEVER;
    private long attachedMillis = NEVER;
    private long meteredMillis = NEVER;

    OpenCircuitProof(FindingBook findings, FineRecovery fine) {
        this.findings = findings;
        this.fine = fine;
    }

    /**
     * The load or the bond has just come off: what was proven before no longer counts.
     *
     * @param lastVolts the last voltage before; NaN where the first open reading must serve
     * @param leastRecovery a recovery must exceed this, and the noise of the channel on top
     */
    void begin(double lastVolts, double leastRecovery) {
        startVolts = lastVolts;
        leastRecoveryVolts = leastRecovery;
        recoveredVolts = 0;
        watchedMillis = 0;
        recovered = false;
        pending = false;
        anew = false;
        atOnce = false;
        boardCannotCheck = false;
        unanswered = 0;
        risenMillis = NEVER;
        askedMillis = NEVER;
        smoothVolts = Double.NaN;
        highestVolts = Double.NaN;
        attachAnew();
    }

    /** Nobody said that the load came off: whether the channel is still attached is asked before anything recovers. */
    void askAtOnce() {
        atOnce = true;
    }

    /** The cell hangs on another channel: that it is attached there must be proven there. */
    void moved() {
        smoothVolts = Double.NaN;
        highestVolts = Double.NaN;
        attachAnew();
    }

    /** So late a recovery must be larger to count; what was recovered stays recovered. */
    void isLate() {
        if (!recovered) {
            leastRecoveryVolts = Math.max(LoadWatch.STEP_FACTOR * expandedVolts, Math.abs(startVolts));
        }
    }

    /** Levels before and after cannot be compared; what was recovered stays recovered. */
    void levelAnew() {
        anew = true;
    }

    private void attachAnew() {
        attachedMillis = NEVER;
        meteredMillis = NEVER;
    }

    /** Follows one believable open-circuit voltage. */
    void follow(Reading now) {
        double volts = now.volts();
        expandedVolts = now.expandedVolts();
        differenceVolts = now.differenceVolts();
        watchedMillis += now.stepMillis();
        if (anew || Double.isNaN(startVolts)) {
            anew = false;
            startVolts = volts - (recovered ? recoveredVolts : 0);
            smoothVolts = Double.NaN;
            highestVolts = Double.NaN;
        }
        smoothVolts = Double.isNaN(smoothVolts) ? volts : smoothVolts + (volts - smoothVolts) / 8;
        double forgotten = (highestVolts - smoothVolts) * Math.min(1, now.stepMillis() / FORGET_MILLIS);
        highestVolts = Double.isNaN(highestVolts) ? smoothVolts : Math.max(highestVolts - forgotten, smoothVolts);
        recoveredVolts = smoothVolts - startVolts;
        neededVolts = leastRecoveryVolts + LoadWatch.STEP_FACTOR * now.differenceVolts();
        recovered |= recoveredVolts > neededVolts;
    }

    /** How far the voltage dropped where a resting cell's cannot; 0 if it did not. */
    double impossibleDrop() {
        double least = Math.max(LEAST_DROP_VOLTS, NOISE_DROP_FACTOR * differenceVolts);
        double limit = Math.max(Math.max(least, LoadWatch.STEP_FACTOR * expandedVolts), DROP_FRACTION * highestVolts);
        double drop = Math.max(highestVolts, startVolts) - smoothVolts;
        boolean lostAgain = recovered && recoveredVolts < (leastRecoveryVolts + neededVolts) / 2;
        return drop > limit || lostAgain ? Math.max(drop, neededVolts - recoveredVolts) : 0;
    }

    /** Asks the board for its lead check when one is due: now and then, and afresh when a verdict hangs on it. */
    void askWhenDue(long millis, boolean verdictHangsOnIt) {
        if (pending && millis - askedMillis >= ANSWER_MILLIS) {
            pending = false;
            unanswered++;
            boardCannotCheck |= unanswered >= MOST_UNANSWERED;
        }
        long fresh = verdictHangsOnIt && hasRecovered() ? CHECK_FRESH_MILLIS : CHECK_EVERY_MILLIS;
        boolean urgent = !boardCannotCheck && millis - attachedMillis > fresh && (verdictHangsOnIt || !hasRecovered());
        long every = urgent ? ANSWER_MILLIS : CHECK_EVERY_MILLIS;
        boolean due = hasRecovered() || atOnce || watchedMillis >= UNPROVEN_CHECK_MILLIS;
        if (due && !pending && millis - askedMillis >= every) {
            pending = true;
            askedMillis = millis;
            findings.wish(Wish.CHECK_LEAD);
        }
    }

    void checked(LeadProof answer, long millis) {
        pending = false;
        unanswered = 0;
        boardCannotCheck = answer == LeadProof.NOT_DONE;
        if (answer != LeadProof.NOT_DONE) {
            attachedMillis = answer == LeadProof.ATTACHED ? millis : NEVER;
        }
    }

    /** A person's meter counts where it agrees with the board on a voltage well above its uncertainty. */
    void metered(double meterVolts, long millis) {
        double least = LoadWatch.STEP_FACTOR * expandedVolts;
        if (meterVolts > least && Math.abs(meterVolts - smoothVolts) <= least + METER_FRACTION * meterVolts) {
            meteredMillis = millis;
        }
    }

    /** Whether a person's meter reads so much more that the board cannot be on the same cell. */
    boolean contradicts(double meterVolts) {
        double far = Math.max(METER_FAR_VOLTS, LoadWatch.STEP_FACTOR * expandedVolts);
        return meterVolts - smoothVolts > far + METER_FAR_FRACTION * meterVolts;
    }

    /**
     * Whether a voltage that came back late has first to be confirmed by the board's lead check, because an open input drifts
     * up too; asks for the check, and gives up after three minutes.
     *
     * @param openMillis how long nothing has been across the cell
     */
    boolean isToBeConfirmed(long millis, long openMillis) {
        if (openMillis < CONFIRM_AFTER_MILLIS || boardCannotCheck || millis - attachedMillis <= CHECK_FRESH_MILLIS) {
            return false;
        }
        if (risenMillis == NEVER) {
            risenMillis = millis;
        }
        askWhenDue(millis, true);
        return millis - risenMillis < CONFIRM_MILLIS;
    }

    /** Of the last reading followed; NaN before any. */
    double expandedVolts() {
        return expandedVolts;
    }

    boolean hasRecovered() {
        return recovered || fine.isShown();
    }

    /** Whether the board itself cannot tell if a cell is attached. */
    boolean cannotBeChecked() {
        return boardCannotCheck;
    }

    /** Whether it rises, though not by enough to prove anything yet: a cell whose load is still on does not. */
    boolean hasBegunToRecover() {
        return recoveredVolts > BEGUN_FACTOR * differenceVolts;
    }

    double recoveredVolts() {
        return recoveredVolts;
    }

    double neededVolts() {
        return neededVolts;
    }

    double smoothVolts() {
        return smoothVolts;
    }

    /** For so long the open-circuit voltage has been seen. */
    long watchedMillis() {
        return watchedMillis;
    }

    /** Both proofs, from this very opening and fresh. */
    boolean isComplete(long millis) {
        return hasRecovered() && (millis - attachedMillis <= CHECK_FRESH_MILLIS || isMetered(millis));
    }

    /** Whether what was complete once may still stand: the board goes on checking now and then. */
    boolean stillHolds(long millis) {
        long most = CHECK_EVERY_MILLIS + 2 * ANSWER_MILLIS;
        return hasRecovered() && (millis - attachedMillis <= most || isMetered(millis));
    }

    private boolean isMetered(long millis) {
        return millis - meteredMillis <= METER_FRESH_MILLIS;
    }

    /** Only a meter can complete the proof. */
    boolean needsMeter(long millis) {
        return hasRecovered() && boardCannotCheck && !isComplete(millis);
    }
}
