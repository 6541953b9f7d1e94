package org.ebbwatch.time;

import java.util.Objects;

/**
 * A stretch of event time in which nothing was read, as the interval its length lies in. Event time moves on by
 * {@code leastMillis}; a judge that must not be fooled reckons with {@code mostMillis}.
 *
 * @param leastMillis the gap lasted at least so long, at least 1
 * @param mostMillis the gap lasted at most so long; {@link #UNBOUNDED} where nothing bounds it
 * @param basis what it was measured with
 */
public record Gap(long leastMillis, long mostMillis, GapBasis basis) {

    /** The {@code mostMillis} of a gap that nothing bounds. */
    public static final long UNBOUNDED = Long.MAX_VALUE;

    public Gap {
        Objects.requireNonNull(basis, "basis");
        if (leastMillis < 1 || mostMillis < leastMillis) {
            throw new IllegalArgumentException(
                    "a gap needs 1 <= least <= most, not [" + leastMillis + ", " + mostMillis + "]");
        }
    }

    /** True where the length is known to the millisecond. */
    public boolean exact() {
        return leastMillis == mostMillis;
    }

    /** What is left of this gap when its first {@code millis} are accounted for; at least 1 ms. */
    Gap shortenedBy(long millis) {
        long least = Math.max(1, leastMillis - millis);
        return new Gap(least, mostMillis == UNBOUNDED ? UNBOUNDED : Math.max(least, mostMillis - millis), basis);
    }
}
