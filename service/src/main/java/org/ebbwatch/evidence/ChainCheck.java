package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.passage.PassageChain.Link;
import org.ebbwatch.passage.PassageChain.Stay;

/**
 * Holds the readings of a trace against the segments they were sealed in: every segment names the one before it, and between its
 * first and its last sample the trace has as many readings as the segment has samples.
 */
final class ChainCheck {
    private final List<Link> whole = new ArrayList<>();
    private int at;
    private long rows;

    private ChainCheck() {}

    /** Of a bundle that carries no chain. */
    static ChainCheck none() {
        return new ChainCheck();
    }

    /**
     * Begins to check a trace.
     *
     * @throws DamageException if the chain is broken
     */
    static ChainCheck of(PassageChain chain) throws DamageException {
        var check = new ChainCheck();
        for (Stay stay : chain.stays()) {
            Link before = null;
            for (Link link : stay.links()) {
                requireFollows(stay, before, link);
                if (link.firstEventMillis() >= stay.fromMillis() && link.lastEventMillis() < stay.toMillis()) {
                    check.whole.add(link);
                }
                before = link;
            }
        }
        return check;
    }

    /** The first place where the chain is broken, in words; empty: it is whole. */
    static Optional<String> firstBreak(PassageChain chain) {
        try {
            of(chain);
            return Optional.empty();
        } catch (DamageException e) {
            return Optional.of(e.getMessage());
        }
    }

    private static void requireFollows(Stay stay, Link before, Link link) throws DamageException {
        boolean follows = before == null
                || (link.previous().equals(before.sha256()) && link.firstEventMillis() > before.lastEventMillis());
        if (!follows) {
            throw new DamageException(
                    ChainPart.PATH,
                    "the chain is broken on channel " + stay.channel() + " of board " + stay.board()
                            + ": the segment from event time "
                            + link.firstEventMillis()
                            + " does not follow from the one before it; readings were changed or removed after they were sealed");
        }
    }

    /** Takes the next reading of the trace. */
    void row(long eventMillis) throws DamageException {
        while (at < whole.size() && whole.get(at).lastEventMillis() < eventMillis) {
            requireAll();
            at++;
            rows = 0;
        }
        if (at < whole.size() && whole.get(at).firstEventMillis() <= eventMillis) {
            rows++;
        }
    }

    private void requireAll() throws DamageException {
        Link link = whole.get(at);
        if (rows != link.samples()) {
            throw new DamageException(
                    TraceCsv.PATH,
                    "it has " + rows + " readings between event times " + link.firstEventMillis() + " and "
                            + link.lastEventMillis() + ", the segment sealed there has " + link.samples());
        }
    }
}
