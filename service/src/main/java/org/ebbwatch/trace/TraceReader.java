package org.ebbwatch.trace;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.trace.codec.DamagedSegmentException;
import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.Segment;
import org.ebbwatch.trace.codec.SegmentCodec;
import org.ebbwatch.trace.codec.Sha256;

/** Reads segments from the database, then those that wait for it, then the open scans: one series without a seam. */
final class TraceReader {

    private static final int PAGE = 64;

    private final SegmentTable table;

    TraceReader(SegmentTable table) {
        this.table = table;
    }

    /**
     * What of a channel is not in the database for certain.
     *
     * @param waiting segments, oldest first
     * @param open open scans, may be null
     * @param openStretch what they have in common
     * @param begins event time from which on the database is not to be asked, since it may or may not have got it meanwhile
     */
    record Unsealed(List<SealedSegment> waiting, Samples open, Stretch openStretch, long begins) {}

    void read(String board, int channel, long from, long to, Unsealed unsealed, SampleVisitor visitor) {
        Delivery delivery = new Delivery(from, to, visitor);
        try {
            long next = table.beginningAt(board, channel, from);
            List<SegmentTable.Row> page;
            do {
                page = table.rows(board, channel, next, Math.min(to, unsealed.begins()), PAGE);
                for (SegmentTable.Row row : page) {
                    delivery.segment(row.firstEventMillis(), row.body());
                    next = row.firstEventMillis() + 1;
                }
            } while (page.size() == PAGE);
        } catch (SQLException e) {
            throw new StorageException("the trace of " + board + " channel " + channel + " cannot be read", e);
        }
        for (SealedSegment segment : unsealed.waiting()) {
            delivery.segment(segment.key().firstEventMillis(), segment.body());
        }
        if (unsealed.open() != null) {
            delivery.samples(unsealed.openStretch(), unsealed.open());
        }
    }

    ChainReport verifyChain(String board, int channel, Unsealed unsealed) {
        Chain chain;
        try {
            chain = new Chain(board, channel, table.deleted(board, channel));
            long next = Long.MIN_VALUE;
            List<SegmentTable.Row> page;
            do {
                page = table.rows(board, channel, next, unsealed.begins(), PAGE);
                for (SegmentTable.Row row : page) {
                    chain.follow(row.firstEventMillis(), row.hash(), row.body());
                    next = row.firstEventMillis() + 1;
                }
            } while (page.size() == PAGE);
        } catch (SQLException e) {
            throw new StorageException("the trace of " + board + " channel " + channel + " cannot be read", e);
        }
        for (SealedSegment segment : unsealed.waiting()) {
            chain.follow(segment.key().firstEventMillis(), segment.hash(), segment.body());
        }
        return new ChainReport(chain.segments, chain.samples, List.copyOf(chain.faults));
    }

    /** The links of all sealed segments of a channel that hold some of [from, to), oldest first. */
    List<SegmentLink> links(String board, int channel, long from, long to, Unsealed unsealed) {
        List<SegmentLink> links = new ArrayList<>();
        try {
            long next = table.beginningAt(board, channel, from);
            List<SegmentTable.Row> page;
            do {
                page = table.rows(board, channel, next, Math.min(to, unsealed.begins()), PAGE);
                for (SegmentTable.Row row : page) {
                    links.add(link(row.body()));
                    next = row.firstEventMillis() + 1;
                }
            } while (page.size() == PAGE);
        } catch (SQLException e) {
            throw new StorageException("the trace of " + board + " channel " + channel + " cannot be read", e);
        }
        unsealed.waiting().forEach(segment -> links.add(link(segment.body())));
        links.removeIf(link -> link.lastEventMillis() < from || link.key().firstEventMillis() >= to);
        return links;
    }

    private static SegmentLink link(byte[] body) {
        Segment segment = SegmentCodec.decode(body);
        Samples samples = segment.samples();
        return new SegmentLink(
                segment.key(),
                samples.eventMillis()[samples.count() - 1],
                samples.count(),
                segment.previous(),
                Sha256.of(body));
    }

    /** Shows the samples within [from, to) to a visitor, and every change of what they have in common. */
    private static final class Delivery {
        private final long from;
        private final long to;
        private final SampleVisitor visitor;
        private Stretch shown;

        Delivery(long from, long to, SampleVisitor visitor) {
            this.from = from;
            this.to = to;
            this.visitor = visitor;
        }

        void segment(long firstEventMillis, byte[] body) {
            Segment segment;
            try {
                segment = SegmentCodec.decode(body);
            } catch (DamagedSegmentException damage) {
                visitor.damaged(firstEventMillis, damage);
                return;
            }
            samples(
                    new Stretch(segment.key().bootNumber(), segment.samples().kinds(), segment.identity()),
                    segment.samples());
        }

        void samples(Stretch stretch, Samples samples) {
            boolean withAmperes = samples.kinds().hasAmperes();
            for (int i = 0; i < samples.count(); i++) {
                long eventMillis = samples.eventMillis()[i];
                if (eventMillis < from || eventMillis >= to) {
                    continue;
                }
                if (!stretch.equals(shown)) {
                    shown = stretch;
                    visitor.stretch(stretch);
                }
                visitor.sample(
                        samples.scans()[i],
                        eventMillis,
                        samples.states()[i] & 0xFF,
                        samples.volts()[i],
                        samples.celsius()[i],
                        withAmperes ? samples.amperes()[i] : 0);
            }
        }
    }

    /** Follows the hashes from one segment to the next. */
    private static final class Chain {
        private final Map<Sha256, Sha256> deleted;
        private final String board;
        private final int channel;
        private final List<String> faults = new ArrayList<>();
        private Sha256 previous = Sha256.NONE;
        private long lastEventMillis = Long.MIN_VALUE;
        private long segments;
        private long samples;

        Chain(String board, int channel, Map<Sha256, Sha256> deleted) {
            this.deleted = deleted;
            this.board = board;
            this.channel = channel;
        }

        /** Goes on over segments whose deletion was written down, as far as the segment that is there wants. */
        private void skipDeleted(Sha256 wanted) {
            for (int i = 0; i < deleted.size() && !wanted.equals(previous) && deleted.containsKey(previous); i++) {
                previous = deleted.get(previous);
            }
        }

        void follow(long firstEventMillis, Sha256 hash, byte[] body) {
            String name = "segment at " + firstEventMillis + ": ";
            segments++;
            try {
                Segment segment = SegmentCodec.decode(body);
                skipDeleted(segment.previous());
                if (!segment.previous().equals(previous)) {
                    faults.add(name + "does not follow from the segment before it");
                }
                if (!segment.key().board().equals(board)
                        || segment.key().channel() != channel
                        || segment.key().firstEventMillis() != firstEventMillis) {
                    faults.add(name + "is that of " + segment.key());
                }
                if (firstEventMillis <= lastEventMillis) {
                    faults.add(name + "begins before the one before it ends");
                }
                samples += segment.samples().count();
                lastEventMillis =
                        segment.samples().eventMillis()[segment.samples().count() - 1];
            } catch (DamagedSegmentException damage) {
                faults.add(name + damage.getMessage());
            }
            previous = Sha256.of(body);
            if (!previous.equals(hash)) {
                faults.add(name + "does not fit its hash");
            }
        }
    }
}
