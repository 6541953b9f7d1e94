package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.UUID;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.store.FindingRow;
import org.ebbwatch.store.JournalReader;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.PassageRow;
import org.ebbwatch.store.TransitionRow;

/** The phase changes and findings of one passage as rows, numbered together in the order they came. */
final class EventRows {
    private final UUID passage;
    private final JournalStore journal;
    private final Map<FindingKind, Long> standing = new HashMap<>();
    private long rows;

    /** The rows of a passage that has none yet. */
    EventRows(UUID passage, JournalStore journal) {
        this.passage = passage;
        this.journal = journal;
    }

    void add(long eventMillis, Event event) {
        if (event instanceof Outcome.PhaseChanged changed) {
            changed(eventMillis, changed);
        } else if (event instanceof Outcome.Raised raised) {
            raised(eventMillis, raised.finding());
        } else if (event instanceof Outcome.Cleared cleared) {
            cleared(eventMillis, cleared.kind());
        }
    }

    /**
     * Goes on after what an earlier run wrote down. Where that run ended between a reading and what followed from it, the
     * missing rows are added. Where this version judges otherwise, the rows stay as they were written and only what stands
     * now is set right.
     *
     * @return the phase written down last, where it is not the one the passage is in now
     */
    Optional<Phase> resume(Refolded refolded) {
        List<FindingRow> findings = journal.reader().findings(passage);
        List<String> written = written(journal.reader(), passage);
        List<String> folded = refolded.events();
        if (written.size() <= folded.size() && folded.subList(0, written.size()).equals(written)) {
            complete(refolded, written.size(), findings);
            return Optional.empty();
        }
        rows = written.size();
        setRight(refolded.judge(), findings);
        Phase left = lastPhase();
        Phase now = refolded.judge().phase();
        if (left == now) {
            return Optional.empty();
        }
        changed(refolded.judge().lastMillis(), new Outcome.PhaseChanged(left, now, "judged anew"));
        return Optional.of(left);
    }

    private void complete(Refolded refolded, int written, List<FindingRow> findings) {
        Map<Long, FindingRow> byRow = new HashMap<>();
        findings.forEach(finding -> byRow.put(finding.sequence(), finding));
        for (Refolded.Told told : refolded.told()) {
            boolean makesRow = EventLine.of(told.eventMillis(), told.event()).isPresent();
            if (!makesRow && told.event() instanceof Outcome.Cleared cleared) {
                FindingRow row = byRow.get(standing.getOrDefault(cleared.kind(), 0L));
                if (row != null && row.clearedEventMillis().isPresent()) {
                    standing.remove(cleared.kind());
                }
            }
            if (!makesRow || rows >= written) {
                add(told.eventMillis(), told.event());
            } else {
                rows++;
                if (told.event() instanceof Outcome.Raised raised) {
                    standing.put(raised.finding().kind(), rows);
                }
            }
        }
    }

    private void setRight(Judge judge, List<FindingRow> findings) {
        findings.stream()
                .filter(row -> row.clearedEventMillis().isEmpty())
                .forEach(row -> standing.put(FindingKind.valueOf(row.kind()), row.sequence()));
        for (FindingKind kind : List.copyOf(standing.keySet())) {
            if (judge.findings().stream().noneMatch(finding -> finding.kind() == kind)) {
                cleared(judge.lastMillis(), kind);
            }
        }
        for (Finding finding : judge.findings()) {
            if (!standing.containsKey(finding.kind())) {
                raised(judge.lastMillis(), finding);
            }
        }
    }

    private Phase lastPhase() {
        List<TransitionRow> transitions = journal.reader().transitions(passage);
        return transitions.isEmpty()
                ? Phase.CHECK_IN
                : Phase.valueOf(transitions.get(transitions.size() - 1).toPhase());
    }

    private void changed(long eventMillis, Outcome.PhaseChanged changed) {
        journal.transition(new TransitionRow(
                passage,
                ++rows,
                eventMillis,
                changed.from().name(),
                changed.to().name(),
                changed.reason()));
        if (changed.to().isOver()) {
            journal.closePassage(passage, new PassageRow.Closing(eventMillis, changed.reason()));
        }
    }

    private void raised(long eventMillis, Finding finding) {
        standing.put(finding.kind(), ++rows);
        journal.finding(new FindingRow(
                passage, rows, finding.kind().name(), eventMillis, OptionalLong.empty(), RecordJson.write(finding)));
    }

    private void cleared(long eventMillis, FindingKind kind) {
        Long row = standing.remove(kind);
        if (row != null) {
            journal.clearFinding(passage, row, eventMillis);
        }
    }

    /** Every row of a passage as {@link EventLine} writes it, in order. */
    static List<String> written(JournalReader reader, UUID passage) {
        Map<Long, String> lines = new TreeMap<>();
        for (TransitionRow row : reader.transitions(passage)) {
            lines.put(
                    row.sequence(),
                    row.eventMillis() + " " + row.fromPhase() + " " + row.toPhase() + " " + row.reason());
        }
        for (FindingRow row : reader.findings(passage)) {
            lines.put(row.sequence(), row.raisedEventMillis() + " " + row.kind() + " " + asWrittenNow(row));
        }
        return new ArrayList<>(lines.values());
    }

    /** Another Java may have written the same numbers in other digits. */
    private static String asWrittenNow(FindingRow row) {
        return RecordJson.write(RecordJson.read(Finding.class, row.evidence()));
    }
}
