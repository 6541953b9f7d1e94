package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry.Moved;
import org.ebbwatch.store.JournalRow;

/**
 * A passage was on a channel of its board from some event time on, until the next of these.
 *
 * @param fromMillis event time, included
 * @param channel from 0
 */
record OnChannel(long fromMillis, int channel) {
    private static final String MOVED = Moved.class.getSimpleName();

    /** Where a passage was, in order: where it was opened, then wherever its journal says that it was moved. */
    static List<OnChannel> of(PassageCard card, List<JournalRow> journal) {
        List<OnChannel> stretches = new ArrayList<>();
        stretches.add(new OnChannel(card.openedMillis(), card.channel()));
        for (JournalRow row : journal) {
            if (row.kind().equals(MOVED) && EntryJson.read(row.kind(), row.body()) instanceof Moved moved) {
                stretches.add(new OnChannel(row.positionMillis() + 1, moved.channel()));
            }
        }
        return stretches;
    }
}
