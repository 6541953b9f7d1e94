package org.ebbwatch.judge;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Outcome.Wish;

/** The findings that stand on one passage, and the events of the entry being folded. */
final class FindingBook {
    private final Map<FindingKind, Finding> standing = new EnumMap<>(FindingKind.class);
    private final List<Event> events = new ArrayList<>();
    private long millis;
    private Phase phase = Phase.CHECK_IN;

    /** What follows belongs to this moment. */
    void at(long eventMillis, Phase now) {
        millis = eventMillis;
        phase = now;
    }

    /**
     * Raises a finding that rests on a number held against a limit, unless it stands already; says whether it is new.
     *
     * @param format the line for a person: {@code %1$} is {@code seen}, {@code %2$} is {@code limit}, more follow
     */
    boolean raise(FindingKind kind, double seen, double limit, String unit, String format, Object... more) {
        if (standing.containsKey(kind)) {
            return false;
        }
        Object[] numbers = new Object[more.length + 2];
        numbers[0] = seen;
        numbers[1] = limit;
        System.arraycopy(more, 0, numbers, 2, more.length);
        var finding = new Finding(kind, millis, phase, seen, limit, unit, String.format(Locale.ROOT, format, numbers));
        standing.put(kind, finding);
        events.add(new Outcome.Raised(finding));
        return true;
    }

    /** Raises a finding that rests on no number. */
    void raise(FindingKind kind, String line) {
        raise(kind, Double.NaN, Double.NaN, "", "%3$s", line);
    }

    void clear(FindingKind kind) {
        if (standing.remove(kind) != null) {
            events.add(new Outcome.Cleared(kind));
        }
    }

    /** A person dealt with what locked the load. */
    void clearLatched() {
        for (FindingKind kind : FindingKind.values()) {
            if (kind.holds()) {
                clear(kind);
            }
        }
    }

    /** A standing finding in one line. */
    String line(FindingKind kind) {
        return standing.get(kind).line();
    }

    boolean stands(FindingKind kind) {
        return standing.containsKey(kind);
    }

    boolean anyLatched() {
        for (FindingKind kind : standing.keySet()) {
            if (kind.isLatched()) {
                return true;
            }
        }
        return false;
    }

    boolean anyOpensTheLoad() {
        for (FindingKind kind : standing.keySet()) {
            if (kind.loadRule() == FindingKind.LoadRule.OPEN) {
                return true;
            }
        }
        return false;
    }

    Collection<Finding> standing() {
        return Collections.unmodifiableCollection(standing.values());
    }

    void changed(Phase from, Phase to, String reason) {
        phase = to;
        events.add(new Outcome.PhaseChanged(from, to, reason));
    }

    void wish(Wish wish) {
        events.add(new Outcome.Wished(wish));
    }

    /** What happened since the last call. */
    Outcome takeOutcome() {
        if (events.isEmpty()) {
            return Outcome.NOTHING;
        }
        var outcome = new Outcome(events);
        events.clear();
        return outcome;
    }
}
