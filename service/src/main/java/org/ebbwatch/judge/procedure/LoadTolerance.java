package org.ebbwatch.judge.procedure;

/**
 * How far a load and its leads together may be off the ohms on the card.
 *
 * @param share half-width, relative: 0.01 for 1 %; 0 to 0.2
 */
public record LoadTolerance(double share) {
    /** Where nobody says: common practice, no source. */
    public static final LoadTolerance USUAL = new LoadTolerance(0.05);

    /** A load known worse than this is better measured first. */
    public static final double MOST_SHARE = 0.2;

    private static final double USUAL_EXPANDED_SHARE = 0.058;

    public LoadTolerance {
        if (!(share >= 0 && share <= MOST_SHARE)) {
            throw new IllegalArgumentException(
                    "a load's tolerance is a share from 0 to " + MOST_SHARE + ", not " + share);
        }
    }

    /**
     * Expanded uncertainty (k = 2), relative: 2/√3 of the half-width, as every value within it is as likely as any other (JCGM 100,
     * 4.3.7), and rounded up to 5.8 % for 5 %.
     */
    public double expandedShare() {
        return share * USUAL_EXPANDED_SHARE / USUAL.share;
    }
}
