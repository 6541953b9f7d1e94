package org.ebbwatch.killed;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;

/** Folds a stored passage again and looks at it on both sides of each gap. */
final class GapReader implements JournalTaker {
    private final PassageCard card;
    private final Judge judge;
    private final List<Across> gaps = new ArrayList<>();
    private Entry.Gap open;
    private Phase phase;
    private long remainingMillis;

    GapReader(PassageCard card) {
        this.card = card;
        this.judge = new Judge(card.cell(), card.procedure());
    }

    List<Across> read(StoredRack storage) {
        storage.read(card, this);
        return gaps;
    }

    @Override
    public boolean scan(long sequence, Entry.Scan scan) {
        judge.fold(scan);
        if (open != null) {
            gaps.add(new Across(
                    open, phase, remainingMillis, judge.phase(), judge.remainingMillis(), wholeMillis(judge.phase())));
            open = null;
        }
        return !judge.phase().isOver();
    }

    @Override
    public boolean entry(long sequence, KeptEntry kept) {
        if (kept.entry() instanceof Entry.Gap gap) {
            open = gap;
            phase = judge.phase();
            remainingMillis = judge.remainingMillis();
        }
        judge.fold(kept.entry());
        return true;
    }

    private long wholeMillis(Phase of) {
        Procedure procedure = card.procedure();
        return of == Phase.REST
                ? procedure.rest().leastMillis()
                : procedure.tieOff().watchMillis();
    }
}
