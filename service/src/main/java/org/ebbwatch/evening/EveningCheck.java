package org.ebbwatch.evening;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;

/**
 * An evening check for people to look at.
 *
 * @param by who asked for it
 * @param endedWallMillis empty while it runs, and where it was broken off
 * @param verdict the worst of its points
 * @param passages that it covers
 * @param awaits what is still going on; empty once it is over
 */
public record EveningCheck(
        UUID id,
        State state,
        String by,
        long startedWallMillis,
        OptionalLong endedWallMillis,
        Proof verdict,
        List<UUID> passages,
        List<Point> points,
        List<String> awaits) {

    /** Where a check is. */
    public enum State {
        RUNNING,
        ENDED,
        /** The service ended before it did. */
        BROKEN_OFF
    }

    public EveningCheck {
        requireNonNull(id);
        requireNonNull(state);
        requireNonNull(by);
        requireNonNull(endedWallMillis);
        requireNonNull(verdict);
        passages = List.copyOf(passages);
        points = List.copyOf(points);
        awaits = List.copyOf(awaits);
    }
}
