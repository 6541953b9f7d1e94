package org.ebbwatch.rough;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** Every scan a board sent, as it left the board: the truth that records are held against. Filled by one thread, read by any. */
final class SentScans {
    private static final int MOST_CHANNELS = 64;

    private final Map<Key, Scan> scans = new ConcurrentHashMap<>();
    private final FrameDecoder decoder = new FrameDecoder(new Sink());
    private volatile long lastScan;

    private record Key(long bootNumber, long scan) {}

    /** The counts of one scan by channel. */
    static final class Scan {
        private final byte[] states = new byte[MOST_CHANNELS];
        private final int[] volts = new int[MOST_CHANNELS];
        private final int[] celsius = new int[MOST_CHANNELS];

        boolean is(int channel, int state, int itsVolts, int itsCelsius) {
            return (states[channel] & 0xFF) == state && volts[channel] == itsVolts && celsius[channel] == itsCelsius;
        }
    }

    /** Takes whole frames as they leave the board. */
    void sent(byte[] frame) {
        decoder.accept(frame, 0, frame.length);
    }

    Optional<Scan> find(long bootNumber, long scan) {
        return Optional.ofNullable(scans.get(new Key(bootNumber, scan)));
    }

    /** Number of the newest scan that left the board. */
    long lastScan() {
        return lastScan;
    }

    int size() {
        return scans.size();
    }

    private final class Sink implements FrameSink {
        @Override
        public void readings(ReadingsView view) {
            Scan scan = scans.computeIfAbsent(new Key(view.bootNumber(), view.scan()), none -> new Scan());
            for (int i = 0; i < view.count(); i++) {
                int channel = view.firstChannel() + i;
                scan.states[channel] = (byte) view.state(i);
                scan.volts[channel] = view.volts(i);
                scan.celsius[channel] = view.celsius(i);
            }
            lastScan = view.scan();
        }

        @Override
        public void message(int sequence, Message message) {
            // Only scans are held against the records.
        }
    }
}
