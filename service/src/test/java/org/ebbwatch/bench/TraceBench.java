package org.ebbwatch.bench;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
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

    private TraceBench() {}

    public static void main(String[] arguments) throws IOException {
        ((Logger) LoggerFactory.getLogger("org.flywaydb")).setLevel(Level.WARN);
        List<Samples> night = Night.segments(48, 12, 1);
        sizes(night);
        for (int round = 1; round <= ROUNDS; round++) {
            codec(night, round);
        }
        for (int round = 1; round <= ROUNDS; round++) {
            store(round);
        }
    }

    private static void sizes(List<Samples> night) {
        long pairs = 0;
        long coded = 0;
        long rows = 0;
        long planes = 0;
        List<int[]> volts = new ArrayList<>();
        List<int[]> celsius = new ArrayList<>();
        for (Samples samples : night) {
            pairs += samples.count();
            coded += encode(samples).length;
            rows += Night.deflated(Night.rows(samples));
            planes += Night.deflated(Night.planes(samples));
            volts.add(samples.volts());
            celsius.add(samples.celsius());
        }
        double floor = (Night.bestDifferenceBits(volts) + Night.bestDifferenceBits(celsius)) / 8;
        double noise = 2 * Math.log(Math.sqrt(2 * Math.PI * Math.E)) / Math.log(2) / 8;
        System.out.printf("%d pairs in %d segments%n", pairs, night.size());
        System.out.printf("bytes a pair, with times, states, head and hashes   %.3f%n", (double) coded / pairs);
        System.out.printf("bytes a pair, rows through deflate                  %.3f%n", (double) rows / pairs);
        System.out.printf("bytes a pair, differences in planes through deflate %.3f%n", (double) planes / pairs);
        System.out.printf("bytes a pair, entropy of the best differences       %.3f (readings only)%n", floor);
        System.out.printf("bytes a pair, entropy of the noise itself           %.3f (readings only)%n", noise);
    }

    private static void codec(List<Samples> night, int round) {
        long pairs = 0;
        List<byte[]> encoded = new ArrayList<>(night.size());
        long begin = System.nanoTime();
        for (Samples samples : night) {
            encoded.add(encode(samples));
            pairs += samples.count();
        }
        long middle = System.nanoTime();
        long check = 0;
        for (byte[] bytes : encoded) {
            check += SegmentCodec.decode(bytes).samples().volts()[Night.SEGMENT_SAMPLES - 1];
        }
        long end = System.nanoTime();
        System.out.printf(
                "codec round %d: encode %.0f ns a pair, decode %.0f ns a pair; two million pairs both ways %.2f s (%d)%n",
                round,
                (double) (middle - begin) / pairs,
                (double) (end - middle) / pairs,
                (end - begin) / 1e9 * 2_000_000 / pairs,
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
        List<Samples> cells = Night.segments(channels, 2, round);
        int segmentsPerChannel = cells.size() / channels;
        Path directory = Files.createTempDirectory("trace-bench");
        try (Database database = H2Database.open(directory);
                TraceStore trace = TraceStore.open(database, directory)) {
            trace.identified(new BoardBoot("RIG-0001", 1, ValueKinds.COUNTS, "{}"));
            Rack row = new Rack(channels);
            long spent = 0;
            for (int scan = 0; scan < scans; scan++) {
                int second = scan % (segmentsPerChannel * Night.SEGMENT_SAMPLES);
                row.fill(cells, segmentsPerChannel, second, scan);
                long begin = System.nanoTime();
                trace.append("RIG-0001", row);
                if (scan % 1000 == 0) {
                    trace.tick(begin);
                }
                spent += System.nanoTime() - begin;
            }
            long begin = System.nanoTime();
            trace.flush();
            spent += System.nanoTime() - begin;
            long[] read = {0};
            begin = System.nanoTime();
            for (int channel = 0; channel < channels; channel++) {
                trace.read("RIG-0001", channel, 0, Long.MAX_VALUE, (s, e, state, v, c, a) -> read[0]++);
            }
            long reading = System.nanoTime() - begin;
            System.out.printf(
                    "store round %d: %.2f us a scan of %d channels all in; read back %.0f ns a sample; database %.2f"
                            + " bytes a pair on disk%n",
                    round,
                    spent / 1e3 / scans,
                    channels,
                    (double) reading / read[0],
                    (double) Files.size(directory.resolve("ebbwatch.mv.db")) / scans / channels);
        } finally {
            delete(directory);
        }
    }

    private static void delete(Path directory) throws IOException {
        try (Stream<Path> files = Files.walk(directory)) {
            files.sorted(Comparator.reverseOrder()).forEach(file -> {
                try {
                    Files.delete(file);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    /** One scan, used again and again. */
    private static final class Rack implements ScanRow {
        private final int[] volts;
        private final int[] celsius;
        private final byte[] states;
        private long scan;

        Rack(int channels) {
            volts = new int[channels];
            celsius = new int[channels];
            states = new byte[channels];
        }

        void fill(List<Samples> cells, int segmentsPerChannel, int second, long itsScan) {
            scan = itsScan;
            for (int channel = 0; channel < volts.length; channel++) {
                int segment = channel * segmentsPerChannel + second / Night.SEGMENT_SAMPLES;
                Samples samples = cells.get(segment);
                int at = second % Night.SEGMENT_SAMPLES;
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
