package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.UUID;

/**
 * One thing that was to be proven, and what came of it.
 *
 * @param about the cell's tag, the board, the outlet or the alarm; empty where it is about the rack
 * @param passage the cell's; empty where it is about none
 * @param expected what had to be so
 * @param seen what was so
 * @param toDo what to do about it; empty where nothing is to be done
 */
public record Point(
        Matter matter, String about, Optional<UUID> passage, Proof proof, String expected, String seen, String toDo) {
    public Point {
        requireNonNull(matter);
        requireNonNull(about);
        requireNonNull(passage);
        requireNonNull(proof);
        requireNonNull(expected);
        requireNonNull(seen);
        requireNonNull(toDo);
        if (proof != Proof.PASSED && toDo.isBlank()) {
            throw new IllegalArgumentException(matter + " of " + about + " is " + proof + " and says not what to do");
        }
    }

    static Point passed(Matter matter, String about, String expected, String seen) {
        return new Point(matter, about, Optional.empty(), Proof.PASSED, expected, seen, "");
    }

    static Point failed(Matter matter, String about, String expected, String seen, String toDo) {
        return new Point(matter, about, Optional.empty(), Proof.FAILED, expected, seen, toDo);
    }

    static Point notProven(Matter matter, String about, String expected, String seen, String toDo) {
        return new Point(matter, about, Optional.empty(), Proof.NOT_PROVEN, expected, seen, toDo);
    }

    Point of(UUID whose) {
        return new Point(matter, about, Optional.of(whose), proof, expected, seen, toDo);
    }
}
