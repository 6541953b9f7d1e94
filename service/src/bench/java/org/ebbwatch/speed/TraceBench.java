package org.ebbwatch.speed;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.trace.BoardBoot;
import org.ebbwatch.trace.ScanRow;
import org.ebbwatch.trace.TraceStore;
import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.SegmentCodec;
import org.ebbwatch.trace.codec.SegmentKey;
import org.ebbwatch.trace.codec.Sha256;
import org.ebbwatch.trace.codec.ValueKinds;
import org.slf4j.LoggerFactory;

/** Measures the codec and the store; the command and the results are in {@code docs/benchmarks/trace.md}. */
public final class TraceBench {

    private static final int ROUNDS = 5;
    /** Name, key, two hashes and checksum of a segment of board RIG-0001: see {@link SegmentCodec}. */
    private static final int HEAD_BYTES = 4 + 8 + 3 * 8 + 2 + 2 * 32 + 4;

    /** A pair as it is handed out: scan, time, state, volts and degrees. */
    private static final int DECODED_BYTES = 8 + 8 + 1 + 4 + 4;

    private static final List<String> RECORDED = List.of(
            "short_pouch_100soc.csv", "nmc18650_overdischarge_to_1V03_rest.csv", "lfp26650_discharge_to_2V37_rest.csv");

    private TraceBench() {}

    public static void main(String[] arguments) throws IOException {
        ((Logger) LoggerFactory.getLogger("org.flywaydb")).setLevel(Level.WARN);
        List<Samples> night = Night.segments(48, 12, 1, Night.TEN_MINUTES);
        sizes(night, 0.000_1, 0.02);
        double noise = 2 * Math.log(Math.sqrt(2 * Math.PI * Math.E * 13 / 12)) / Math.log(2) / 8;
        System.out.printf(
                "  entropy of the noise itself: %.3f; in segments of 4096 samples: %.3f%n", noise, longSegments());
        recordings();
        for (int round = 1; round <= ROUNDS; round++) {
            codec(night, round);
        }
        for (int round = 1; round <= ROUNDS; round++) {
            store(round);
        }
    }

    private static void recordings() throws IOException {
        Path folder = Path.of(System.getProperty("recordings", "absent"));
        for (String file : RECORDED) {
            List<Samples> segments = Recordings.segments(folder.resolve(file), Samples.MOST);
            if (segments.isEmpty()) {
                System.out.println("no recording " + folder.resolve(file));
            } else {
                System.out.println(file);
                sizes(segments, 0.000_1, 0.001);
            }
        }
    }

    private static void sizes(List<Samples> segments, double voltsPerCount, double kelvinPerCount) {
        long pairs = 0;
        long coded = 0;
        long heads = 0;
        long rows = 0;
        long planes = 0;
        double xor = 0;
        List<int[]> volts = new ArrayList<>();
        List<int[]> celsius = new ArrayList<>();
        for (Samples samples : segments) {
            pairs += samples.count();
            coded += encode(samples).length;
            heads += HEAD_BYTES;
            rows += Night.deflated(Night.rows(samples));
            planes += Night.deflated(Night.planes(samples));
            xor += XorFloats.bytes(samples, voltsPerCount, kelvinPerCount);
            volts.add(samples.volts());
            celsius.add(samples.celsius());
        }
        double floor = (Night.bestDifferenceBits(volts) + Night.bestDifferenceBits(celsius)) / 8;
        System.out.printf("%d pairs in %d segments%n", pairs, segments.size());
        tell("a segment, with times, states, head and hashes", (double) coded / pairs, floor);
        tell("the same without its head", (double) (coded - heads) / pairs, floor);
        tell("exclusive-or of floats, times and readings", xor / pairs, floor);
        tell("differences in byte planes through deflate", (double) planes / pairs, floor);
        tell("rows of 21 bytes through deflate (gzip)", (double) rows / pairs, floor);
        tell("entropy of the best differences, readings only", floor, floor);
    }

    private static void tell(String what, double bytesAPair, double floor) {
        System.out.printf("  %-48s %6.3f bytes a pair, %5.2f of the floor%n", what, bytesAPair, bytesAPair / floor);
    }

    private static double longSegments() {
        long pairs = 0;
        long coded = 0;
        for (Samples samples : Night.segments(48, 12, 1, Samples.MOST)) {
            pairs += samples.count();
            coded += encode(samples).length;
        }
        return (double) coded / pairs;
    }

    private static void codec(List<Samples> night, int round) {
        long pairs = 0;
        List<byte[]> encoded = new ArrayList<>(night.size());
        Stopwatch encoding = new Stopwatch();
        for (Samples samples : night) {
            encoded.add(encode(samples));
            pairs += samples.count();
        }
        encoding.stop();
        long check = 0;
        Stopwatch decoding = new Stopwatch();
        for (byte[] bytes : encoded) {
            check += SegmentCodec.decode(bytes).samples().volts()[Night.TEN_MINUTES - 1];
        }
        decoding.stop();
        System.out.printf(
                "codec round %d: encode %s, decode %s ns a pair, %.0f MB of samples a second at work; two million pairs"
                        + " both ways %.2f s of the clock (%d)%n",
                round,
                encoding.nanosPer(pairs),
                decoding.nanosPer(pairs),
                DECODED_BYTES * 1e3 * pairs / decoding.workNanos,
                (encoding.wallNanos + decoding.wallNanos) / 1e9 * 2_000_000 / pairs,
                check);
    }

    private static byte[] encode(Samples samples) {
        SegmentKey key = new SegmentKey("RIG-0001", 0, 1, samples.scans()[0], samples.eventMillis()[0]);
        return SegmentCodec.encode(key, Sha256.NONE, Sha256.NONE, samples);
    }

    /** A rack of 16 channels as fast as it goes: tail, sealing, clearing up and all. */
    private static void store(int round) throws IOException {
        int scans = 200_000;
        int channels = 16;
        List<Samples> cells = Night.segments(channels, 2, round, Night.TEN_MINUTES);
        int segmentsPerChannel = cells.size() / channels;
        Path directory = Files.createTempDirectory("trace-bench");
        try (Database database = H2Database.open(directory);
                TraceStore trace = TraceStore.open(database, directory)) {
            trace.identified(new BoardBoot("RIG-0001", 1, ValueKinds.COUNTS, "{}"));
            List<Rack> rows = new ArrayList<>();
            for (int second = 0; second < segmentsPerChannel * Night.TEN_MINUTES; second++) {
                rows.add(new Rack(cells, channels, second));
            }
            Stopwatch writing = new Stopwatch();
            for (int scan = 0; scan < scans; scan++) {
                Rack row = rows.get(scan % rows.size());
                row.scan = scan;
                trace.append("RIG-0001", row);
                if (scan % 1000 == 0) {
                    trace.tick(System.nanoTime());
                }
            }
            trace.flush();
            writing.stop();
            long[] read = {0};
            Stopwatch reading = new Stopwatch();
            for (int channel = 0; channel < channels; channel++) {
                trace.read("RIG-0001", channel, 0, Long.MAX_VALUE, (s, e, state, v, c, a) -> read[0]++);
            }
            reading.stop();
            System.out.printf(
                    "store round %d: %s ns a scan of %d channels all in; read back %s ns a sample; database %.2f bytes a"
                            + " pair on disk%n",
                    round,
                    writing.nanosPer(scans),
                    channels,
                    reading.nanosPer(read[0]),
                    (double) Files.size(directory.resolve("ebbwatch.mv.db")) / scans / channels);
        } finally {
            Folders.delete(directory);
        }
    }

    /** Time by the clock and time this thread was at work: they differ on a busy machine and where the disk is waited for. */
    private static final class Stopwatch {
        private long wallNanos = -System.nanoTime();
        private long workNanos = -work();

        void stop() {
            wallNanos += System.nanoTime();
            workNanos += work();
        }

        String nanosPer(long what) {
            return String.format("%d (%d at work)", wallNanos / what, workNanos / what);
        }

        private static long work() {
            return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        }
    }

    /** One scan of a rack, used once a round of the night. */
    private static final class Rack implements ScanRow {
        private final int[] volts;
        private final int[] celsius;
        private final byte[] states;
        private long scan;

        Rack(List<Samples> cells, int channels, int second) {
            volts = new int[channels];
            celsius = new int[channels];
            states = new byte[channels];
            int segmentsPerChannel = cells.size() / channels;
            for (int channel = 0; channel < channels; channel++) {
                Samples samples = cells.get(channel * segmentsPerChannel + second / Night.TEN_MINUTES);
                int at = second % Night.TEN_MINUTES;
                volts[channel] = samples.volts()[at];
                celsius[channel] = samples.celsius()[at];
                states[channel] = samples.states()[at];
            }
        }

        @Override
        public long bootNumber() {
            return 1;
        }

        @Override
        public long scan() {
            return scan;
        }

        @Override
        public long eventMillis() {
            return 1000 * scan;
        }

        @Override
        public int channels() {
            return volts.length;
        }

        @Override
        public int[] volts() {
            return volts;
        }

        @Override
        public int[] celsius() {
            return celsius;
        }

        @Override
        public int[] amperes() {
            return null;
        }

        @Override
        public byte[] states() {
            return states;
        }
    }
}
