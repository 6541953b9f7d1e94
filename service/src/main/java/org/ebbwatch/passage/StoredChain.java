package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.store.JournalRow;
import org.ebbwatch.trace.SegmentLink;
import org.ebbwatch.trace.TraceStore;

/** Looks up the segments that hold a passage's readings. */
final class StoredChain {
    private StoredChain() {}

    static PassageChain of(PassageCard card, List<JournalRow> journal, TraceStore trace, long endMillis) {
        List<OnChannel> channels = OnChannel.of(card, journal);
        List<PassageChain.Stay> stays = new ArrayList<>();
        for (int i = 0; i < channels.size(); i++) {
            int channel = channels.get(i).channel();
            long from = channels.get(i).fromMillis();
            long to = i + 1 < channels.size() ? channels.get(i + 1).fromMillis() : endMillis + 1;
            if (from < to) {
                stays.add(new PassageChain.Stay(
                        card.board(),
                        channel,
                        from,
                        to,
                        trace.links(card.board(), channel, from, to).stream()
                                .map(StoredChain::link)
                                .toList()));
            }
        }
        return new PassageChain(List.copyOf(stays));
    }

    private static PassageChain.Link link(SegmentLink link) {
        return new PassageChain.Link(
                link.key().bootNumber(),
                link.key().firstScan(),
                link.key().firstEventMillis(),
                link.lastEventMillis(),
                link.samples(),
                link.previous(),
                link.sha256());
    }
}
