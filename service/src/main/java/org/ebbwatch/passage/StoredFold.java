package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.store.JournalRow;
import org.ebbwatch.trace.TraceStore;

/**
 * Folds a stored passage again: the readings of its channel from the trace and everything else from the journal, in the very
 * order in which they were folded first. The journal says of each of its entries after which scan it came.
 */
final class StoredFold {
    private final PassageCard card;
    private final List<JournalRow> rows;
    private final TraceStore trace;
    private final Judge judge;
    private final List<String> events = new ArrayList<>();
    private final List<Past> past = new ArrayList<>();
    private int nextRow;
    private long sequence;
    private long lastScanMillis;

    StoredFold(PassageCard card, List<JournalRow> rows, TraceStore trace) {
        this.card = card;
        this.rows = rows;
        this.trace = trace;
        this.judge = new Judge(card.cell(), card.procedure());
        this.lastScanMillis = card.openedMillis() - 1;
    }

    Refolded fold() {
        long end = trace.lastEventMillis(card.board()).orElse(card.openedMillis()) + 1;
        new ScanReader(card, trace).read(card.openedMillis(), end, this::scan);
        rowsBefore(Long.MAX_VALUE);
        return new Refolded(judge, sequence, lastScanMillis, events, past);
    }

    private void scan(Entry.Scan scan) {
        rowsBefore(scan.eventMillis());
        if (!judge.phase().isOver()) {
            take(scan);
            lastScanMillis = scan.eventMillis();
        }
    }

    private void rowsBefore(long scanMillis) {
        while (nextRow < rows.size() && rows.get(nextRow).positionMillis() < scanMillis) {
            JournalRow row = rows.get(nextRow++);
            take(EntryJson.read(row.kind(), row.body()));
        }
    }

    private void take(Entry entry) {
        sequence++;
        for (Outcome.Event event : judge.fold(entry).events()) {
            Past.of(entry.eventMillis(), event).ifPresent(past::add);
            if (event instanceof Outcome.PhaseChanged changed) {
                events.add(entry.eventMillis() + " " + changed.from() + " " + changed.to() + " " + changed.reason());
            } else if (event instanceof Outcome.Raised raised) {
                events.add(
                        entry.eventMillis() + " " + raised.finding().kind() + " " + RecordJson.write(raised.finding()));
            }
        }
    }
}
