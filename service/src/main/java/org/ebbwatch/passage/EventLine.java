package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.judge.Outcome;

/** A phase change or a finding in one line, so that what was written down can be held against what a fold gives. */
public final class EventLine {
    private EventLine() {}

    /** The line of an event; empty for what is no phase change and no finding. */
    public static Optional<String> of(long eventMillis, Outcome.Event event) {
        if (event instanceof Outcome.PhaseChanged changed) {
            return Optional.of(eventMillis + " " + changed.from() + " " + changed.to() + " " + changed.reason());
        }
        if (event instanceof Outcome.Raised raised) {
            return Optional.of(eventMillis + " " + raised.finding().kind() + " " + RecordJson.write(raised.finding()));
        }
        return Optional.empty();
    }
}
