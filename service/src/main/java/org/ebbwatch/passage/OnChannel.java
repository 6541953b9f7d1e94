package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.judge.Entry.Moved;
import org.ebbwatch.judge.Entry.StringOpened;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.store.JournalRow;

/**
 * A passage was on a channel of its board from some event time on, until the next of these.
 *
 * @param fromMillis event time, included
 * @param channel from 0
 * @param string the string with which it was drained there; empty where it stood singly
 */
record OnChannel(long fromMillis, int channel, Optional<CellString> string) {
    private static final String MOVED = Moved.class.getSimpleName();
    private static final String STRING_OPENED = StringOpened.class.getSimpleName();

    /** Where a passage was, in order: where it was opened, then wherever its journal says that it was moved or left its string. */
    static List<OnChannel> of(PassageCard card, List<JournalRow> journal) {
        List<OnChannel> stretches = new ArrayList<>();
        int channel = card.channel();
        stretches.add(new OnChannel(card.openedMillis(), channel, card.cell().string()));
        for (JournalRow row : journal) {
            if (row.kind().equals(MOVED) && EntryJson.read(row.kind(), row.body()) instanceof Moved moved) {
                channel = moved.channel();
                stretches.add(new OnChannel(row.positionMillis() + 1, channel, Optional.empty()));
            } else if (row.kind().equals(STRING_OPENED)) {
                stretches.add(new OnChannel(row.positionMillis() + 1, channel, Optional.empty()));
            }
        }
        return stretches;
    }
}
