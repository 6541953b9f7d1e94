package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;

/** Folds a stored passage again. */
final class StoredFold implements JournalTaker {
    private final Judge judge;
    private final List<Refolded.Told> told = new ArrayList<>();
    private long lastSequence;
    private long changedSequence;
    private int channel;
    private long lastScanMillis;

    private StoredFold(PassageCard card) {
        this.judge = new Judge(card.cell(), card.procedure());
        this.channel = card.channel();
        this.lastScanMillis = card.openedMillis() - 1;
    }

    static Refolded fold(PassageCard card, StoredJournal journal) {
        var fold = new StoredFold(card);
        journal.read(fold);
        return new Refolded(
                fold.judge, fold.lastSequence, fold.changedSequence, fold.channel, fold.lastScanMillis, fold.told);
    }

    @Override
    public boolean scan(long sequence, Entry.Scan scan) {
        if (judge.phase().isOver()) {
            return false;
        }
        lastScanMillis = scan.eventMillis();
        return take(sequence, scan);
    }

    @Override
    public boolean entry(long sequence, KeptEntry kept) {
        if (kept.entry() instanceof Entry.Moved moved) {
            channel = moved.channel();
        }
        return take(sequence, kept.entry());
    }

    private boolean take(long sequence, Entry entry) {
        lastSequence = sequence;
        Outcome outcome = judge.fold(entry);
        if (Change.isOne(entry, outcome)) {
            changedSequence = sequence;
        }
        for (Outcome.Event event : outcome.events()) {
            if (!(event instanceof Outcome.Wished)) {
                told.add(new Refolded.Told(entry.eventMillis(), event));
            }
        }
        return true;
    }
}
