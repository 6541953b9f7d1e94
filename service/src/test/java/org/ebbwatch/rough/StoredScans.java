package org.ebbwatch.rough;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.trace.ChainReport;
import org.ebbwatch.trace.SampleVisitor;
import org.ebbwatch.trace.Stretch;
import org.ebbwatch.trace.TraceStore;

/**
 * The readings in a folder of records, held bit for bit against those the board sent.
 *
 * @param scans numbers of the scans of the first channel, in their order
 * @param lastEventMillis event time of the last; -1 where there is none
 */
record StoredScans(List<Long> scans, long lastEventMillis) {

    static StoredScans check(Path records, String board, int channels, SentScans sent, Trouble trouble) {
        var scans = new ArrayList<Long>();
        long lastEventMillis;
        try (H2Database database = H2Database.open(records);
                TraceStore trace = TraceStore.open(database, records)) {
            for (int channel = 0; channel < channels; channel++) {
                ChainReport chain = trace.verifyChain(board, channel);
                trouble.unless(chain.isWhole(), "channel " + channel + ": " + chain.faults());
                trace.read(board, channel, Long.MIN_VALUE, Long.MAX_VALUE, new Against(channel, sent, scans, trouble));
            }
            lastEventMillis = trace.lastEventMillis(board).orElse(-1);
        }
        return new StoredScans(scans, lastEventMillis);
    }

    /** Highest scan number; 0 where there is none. */
    long last() {
        return scans.isEmpty() ? 0 : scans.get(scans.size() - 1);
    }

    /** How often scans are missing between two that are there. */
    int holes() {
        int holes = 0;
        for (int i = 1; i < scans.size(); i++) {
            holes += scans.get(i) > scans.get(i - 1) + 1 ? 1 : 0;
        }
        return holes;
    }

    @Override
    public String toString() {
        return scans.size() + " scans to " + last() + ", " + holes() + " holes";
    }

    private static final class Against implements SampleVisitor {
        private final int channel;
        private final SentScans sent;
        private final List<Long> scans;
        private final Trouble trouble;
        private long bootNumber;
        private long lastEventMillis = Long.MIN_VALUE;

        Against(int channel, SentScans sent, List<Long> scans, Trouble trouble) {
            this.channel = channel;
            this.sent = sent;
            this.scans = scans;
            this.trouble = trouble;
        }

        @Override
        public void stretch(Stretch stretch) {
            bootNumber = stretch.bootNumber();
        }

        @Override
        public void sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes) {
            if (channel == 0) {
                scans.add(scan);
            }
            trouble.unless(eventMillis > lastEventMillis, "event time of scan " + scan + " does not rise");
            lastEventMillis = eventMillis;
            boolean same = sent.find(bootNumber, scan)
                    .map(it -> it.is(channel, state, volts, celsius))
                    .orElse(false);
            trouble.unless(
                    same, "boot " + bootNumber + " scan " + scan + " channel " + channel + " was never sent like that");
        }
    }
}
