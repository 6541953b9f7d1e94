package org.ebbwatch.passage;

import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.store.JournalRow;
import org.ebbwatch.trace.TraceStore;

/**
 * A passage as it is stored: the readings of its channel from the trace and everything else from the journal, in the very
 * order in which they were folded first. The journal says of each of its entries after which scan it came.
 */
final class StoredJournal {
    private final PassageCard card;
    private final List<JournalRow> rows;
    private final TraceStore trace;
    private int nextRow;
    private long sequence;

    StoredJournal(PassageCard card, List<JournalRow> rows, TraceStore trace) {
        this.card = card;
        this.rows = rows;
        this.trace = trace;
    }

    /** Tells all of it, once, or until the taker wants no more. */
    void read(JournalTaker taker) {
        long end = trace.lastEventMillis(card.board()).orElse(card.openedMillis()) + 1;
        var teller = new Teller(taker);
        new ScanReader(card.board(), OnChannel.of(card, rows), trace)
                .readWhile(card.openedMillis(), end, taker::board, teller::scan);
        teller.rowsBefore(Long.MAX_VALUE);
    }

    private final class Teller {
        private final JournalTaker taker;
        private boolean wanted = true;

        Teller(JournalTaker taker) {
            this.taker = taker;
        }

        boolean scan(Entry.Scan scan) {
            rowsBefore(scan.eventMillis());
            wanted = wanted && taker.scan(++sequence, scan);
            return wanted;
        }

        void rowsBefore(long scanMillis) {
            while (wanted && nextRow < rows.size() && rows.get(nextRow).positionMillis() < scanMillis) {
                JournalRow row = rows.get(nextRow++);
                Entry entry = EntryJson.read(row.kind(), row.body());
                wanted = taker.entry(
                        ++sequence,
                        new KeptEntry(
                                row.sequence(), row.positionMillis(), row.wall().millis(), entry));
            }
        }
    }
}
