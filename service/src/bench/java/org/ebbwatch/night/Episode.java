package org.ebbwatch.night;

import org.ebbwatch.judge.FindingKind;

/**
 * One finding on one passage: when it became due, when it was found, and when an ideal observer who knows the course of the
 * quantity and the noise would have told: once the expected logarithm of the likelihood ratio of the readings so far reaches
 * the threshold of the false-alarm rate. Only the first time in a passage counts.
 */
final class Episode {
    private static final long NEVER = -1;

    final FindingKind kind;
    private final double threshold;
    private long startMillis = NEVER;
    private long dueSinceMillis = NEVER;
    private long foundMillis = NEVER;
    private long idealMillis = NEVER;
    private double expected;
    private boolean missed;
    private boolean lostAgain;

    Episode(FindingKind kind, double threshold) {
        this.kind = kind;
        this.threshold = threshold;
    }

    /** What leads to the finding begins, before it is due. */
    void starts(long millis) {
        if (startMillis == NEVER) {
            startMillis = millis;
        }
    }

    boolean hasStarted() {
        return startMillis != NEVER;
    }

    /** One scan; {@code stands} says whether the judge has done what the finding asks for. */
    void follow(long millis, boolean due, boolean stands) {
        if (!due || stands) {
            dueSinceMillis = NEVER;
            return;
        }
        starts(millis);
        if (dueSinceMillis == NEVER) {
            dueSinceMillis = millis;
        }
        boolean overdue = millis - dueSinceMillis > Due.patienceMillis(kind);
        missed |= overdue && !isFound();
        lostAgain |= overdue && isFound() && !missed;
    }

    /** What one reading tells the ideal observer: so far from where it would be, with so much noise. */
    void tells(long millis, double away, double noise) {
        if (hasStarted() && idealMillis == NEVER) {
            expected += away * away / (2 * noise * noise);
            if (expected >= threshold) {
                idealMillis = millis;
            }
        }
    }

    void found(long millis) {
        if (foundMillis == NEVER && hasStarted()) {
            foundMillis = millis;
        }
    }

    boolean isFound() {
        return foundMillis != NEVER;
    }

    boolean isMissed() {
        return missed && !isFound();
    }

    /** Whether it was found in time, went, and did not come again though it was still due. */
    boolean isLostAgain() {
        return lostAgain;
    }

    boolean isLate() {
        return missed && isFound();
    }

    double delaySeconds() {
        return (foundMillis - startMillis) / 1000.0;
    }

    /** NaN where the ideal observer had not told by the end. */
    double idealSeconds() {
        return idealMillis == NEVER ? Double.NaN : (idealMillis - startMillis) / 1000.0;
    }
}
