package org.ebbwatch.evening.rule;

import java.util.Collection;

/** How far something is proven. */
public enum Proof {
    PASSED,
    /** Nobody knows: it was not tried, or could not be. */
    NOT_PROVEN,
    FAILED;

    /** The worst there is among points; a check without any proves nothing. */
    public static Proof worst(Collection<Point> points) {
        return points.stream().map(Point::proof).max(Proof::compareTo).orElse(NOT_PROVEN);
    }
}
