package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.evidence.report.Curve;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.passage.EventLine;
import org.ebbwatch.passage.HeardBoard;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;

/** Takes a passage as it is told: scans go into the trace, all else is kept for the record, and everything is judged. */
final class Telling implements JournalTaker {
    private final Folding folding;
    private final WallLabels labels;
    private final TraceCsvWriter trace;
    private final Curve curve = new Curve();
    private final List<Calibration> calibrations = new ArrayList<>();
    private final List<Line> journal = new ArrayList<>();
    private final List<String> events = new ArrayList<>();
    private final List<String> phaseLabels = new ArrayList<>();
    private final List<String> findingLabels = new ArrayList<>();
    private HeardBoard board;
    private String lastLabel;
    private long misplaced;

    /** What the scans from this one on rest on. */
    record Calibration(long fromSequence, long fromEventMillis, HeardBoard board) {}

    /** An entry that is no scan. */
    record Line(long sequence, String wallUtc, KeptEntry kept) {}

    Telling(PassageCard card, TraceCsvWriter trace) {
        this.folding = new Folding(card.cell(), card.procedure());
        this.labels = new WallLabels(card.openedMillis(), card.wallMillis(), card.simulatedSpeed());
        this.lastLabel = labels.text(card.openedMillis());
        this.trace = trace;
    }

    @Override
    public void board(HeardBoard heard) {
        board = heard;
    }

    @Override
    public boolean scan(long sequence, Entry.Scan scan) {
        if (folding.isOver()) {
            return false;
        }
        if (board != null) {
            calibrations.add(new Calibration(sequence, scan.eventMillis(), board));
            board = null;
        }
        lastLabel = labels.text(scan.eventMillis());
        try {
            trace.row(sequence, lastLabel, scan);
            curve.take(scan);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        take(sequence, scan);
        return true;
    }

    @Override
    public boolean entry(long sequence, KeptEntry kept) {
        if (folding.isOver()) {
            return false;
        }
        labels.anchor(kept.entry().eventMillis(), kept.wallMillis());
        lastLabel = WallLabels.rfc3339(kept.wallMillis());
        journal.add(new Line(sequence, lastLabel, kept));
        misplaced += sequence == kept.sequence() ? 0 : 1;
        take(sequence, kept.entry());
        return true;
    }

    private void take(long sequence, Entry entry) {
        Outcome outcome = folding.take(sequence, entry);
        for (Outcome.Event event : outcome.events()) {
            EventLine.of(entry.eventMillis(), event).ifPresent(events::add);
            if (event instanceof Outcome.PhaseChanged) {
                phaseLabels.add(lastLabel);
            } else if (event instanceof Outcome.Raised) {
                findingLabels.add(lastLabel);
            }
        }
    }

    Verdict verdict() {
        return folding.verdict();
    }

    Optional<Soak> soak() {
        return folding.soak();
    }

    Optional<RestPeak> restPeak() {
        return folding.restPeak();
    }

    /** The readings thinned for a plot. */
    Curve curve() {
        return curve;
    }

    List<Calibration> calibrations() {
        return calibrations;
    }

    List<Line> journal() {
        return journal;
    }

    /** Phase changes and findings in the words of {@link EventLine}. */
    List<String> events() {
        return events;
    }

    /** Wall time of each phase change of the verdict. */
    List<String> phaseLabels() {
        return phaseLabels;
    }

    /** Wall time of each finding of the verdict. */
    List<String> findingLabels() {
        return findingLabels;
    }

    /** Wall time of the last entry. */
    String lastLabel() {
        return lastLabel;
    }

    /** How many entries stand at another place than when they were first judged: readings in between are missing. */
    long misplaced() {
        return misplaced;
    }
}
