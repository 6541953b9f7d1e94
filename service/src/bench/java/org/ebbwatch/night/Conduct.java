package org.ebbwatch.night;

/**
 * How a night is gone through, beyond what its seed draws.
 *
 * @param longestMillis passages that are not over by then are unfinished
 * @param fastMillis between scans while something happens
 * @param steadfast whether the person makes no slips and never gives up a held cell that may be drained again
 */
record Conduct(long longestMillis, long fastMillis, boolean steadfast) {
    static final Conduct USUAL = new Conduct(7 * 86_400_000L, 1_000, false);
}
