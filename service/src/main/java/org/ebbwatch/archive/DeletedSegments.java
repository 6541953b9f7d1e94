package org.ebbwatch.archive;

import java.util.List;
import org.ebbwatch.passage.PassageChain.Link;
import org.ebbwatch.passage.PassageChain.Stay;
import org.ebbwatch.trace.codec.Sha256;

/**
 * A run of segments of one channel that is deleted.
 *
 * @param before hash of the segment before the first
 * @param last hash of the last
 * @param count how many
 */
record DeletedSegments(
        String board, int channel, long firstEventMillis, long lastEventMillis, Sha256 before, Sha256 last, int count) {

    /** The segments that lie whole within a stay and begin before {@code newestMillis}. */
    static DeletedSegments within(Stay stay, long newestMillis) {
        List<Link> links = stay.links().stream()
                .filter(link -> link.firstEventMillis() >= stay.fromMillis()
                        && link.lastEventMillis() < stay.toMillis()
                        && link.firstEventMillis() < newestMillis)
                .toList();
        if (links.isEmpty()) {
            return new DeletedSegments(stay.board(), stay.channel(), 0, 0, Sha256.NONE, Sha256.NONE, 0);
        }
        Link first = links.get(0);
        Link last = links.get(links.size() - 1);
        return new DeletedSegments(
                stay.board(),
                stay.channel(),
                first.firstEventMillis(),
                last.lastEventMillis(),
                first.previous(),
                last.sha256(),
                links.size());
    }
}
