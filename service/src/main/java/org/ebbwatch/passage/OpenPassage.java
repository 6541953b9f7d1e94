package org.ebbwatch.passage;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;

/** One passage being watched: its card, its judge, its place in the journal and its recent past. */
final class OpenPassage {
    private static final int PAST_KEPT = 200;

    private final PassageCard card;
    private final PassageLog log;
    private final Judge judge;
    private final Deque<Past> past = new ArrayDeque<>();
    private long sequence;
    private long lastScanMillis;

    /** A passage just opened. */
    OpenPassage(PassageCard card, PassageLog log) {
        this.card = card;
        this.log = log;
        this.judge = new Judge(card.cell(), card.procedure());
        this.lastScanMillis = card.openedMillis() - 1;
    }

    /** A passage taken up again. */
    OpenPassage(PassageCard card, PassageLog log, Refolded refolded) {
        this.card = card;
        this.log = log;
        this.judge = refolded.judge();
        this.sequence = refolded.sequence();
        this.lastScanMillis = refolded.lastScanMillis();
        refolded.past().forEach(this::remember);
    }

    PassageCard card() {
        return card;
    }

    Judge judge() {
        return judge;
    }

    /** Folds an entry, writes it and what follows from it to the journal, and returns what follows. */
    Outcome fold(Entry entry) {
        sequence++;
        if (entry instanceof Scan) {
            lastScanMillis = entry.eventMillis();
        } else {
            log.entered(card.id(), sequence, lastScanMillis, entry);
        }
        Outcome outcome = judge.fold(entry);
        for (Outcome.Event event : outcome.events()) {
            log.happened(card.id(), sequence, entry.eventMillis(), event);
            Past.of(entry.eventMillis(), event).ifPresent(this::remember);
        }
        return outcome;
    }

    private void remember(Past what) {
        past.add(what);
        if (past.size() > PAST_KEPT) {
            past.removeFirst();
        }
    }

    PassageStanding standing() {
        return new PassageStanding(
                card, judge.phase(), judge.reason(), List.copyOf(judge.findings()), judge.lastMillis(), sequence);
    }

    PassageView view() {
        return new PassageView(
                card.id(),
                card.cell().tag(),
                card.board(),
                card.channel(),
                judge.phase(),
                judge.reason(),
                judge.round(),
                judge.ampereHours(),
                judge.wattHours(),
                judge.remainingMillis(),
                card.openedMillis(),
                judge.isLocked(),
                List.copyOf(judge.findings()),
                judge.standingWishes(),
                judge.allowed(),
                List.copyOf(past));
    }
}
