package org.ebbwatch.demo;

import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongUnaryOperator;
import java.util.function.UnaryOperator;
import org.ebbwatch.rig.message.BoardMessage;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/**
 * Clocks about which something is odd.
 *
 * @param wall what the host's wall clock says, by the milliseconds its steady clock has run
 * @param board does something to the bytes a board sends
 */
record OddClocks(LongUnaryOperator wall, UnaryOperator<byte[]> board) {
    static final OddClocks NONE = new OddClocks(millis -> millis, bytes -> bytes);

    private static final long WRAP = 1L << 32;
    private static final long NIGHT_MILLIS = Duration.ofHours(6).toMillis();

    /** Every oddity that must change nothing. */
    static Map<String, OddClocks> all() {
        Map<String, OddClocks> all = new LinkedHashMap<>();
        all.put("wall clock set an hour forward", set(Duration.ofHours(1)));
        all.put("wall clock set an hour back", set(Duration.ofHours(-1)));
        all.put("wall clock set a year forward", set(Duration.ofDays(365)));
        all.put("wall clock set a year back", set(Duration.ofDays(-365)));
        all.put("wall clock set to and fro every minute", new OddClocks(OddClocks::toAndFro, bytes -> bytes));
        all.put("board clock at its wrap at once", wrapsAfter(Duration.ofSeconds(30)));
        all.put("board clock at its wrap after six hours", wrapsAfter(Duration.ofHours(6)));
        return all;
    }

    private static OddClocks set(Duration by) {
        return new OddClocks(millis -> millis < NIGHT_MILLIS ? millis : millis + by.toMillis(), bytes -> bytes);
    }

    private static long toAndFro(long millis) {
        List<Duration> offs = List.of(
                Duration.ZERO, Duration.ofHours(1), Duration.ofHours(-1), Duration.ofDays(365), Duration.ofDays(-365));
        return millis + offs.get((int) (millis / 60_000 % offs.size())).toMillis();
    }

    private static OddClocks wrapsAfter(Duration time) {
        return new OddClocks(millis -> millis, new Shifted(WRAP - time.toMillis())::pass);
    }

    /** Adds to the board's time in every scan, modulo its range. */
    private static final class Shifted implements FrameSink {
        private final long millis;
        private final FrameDecoder decoder = new FrameDecoder(this);
        private final FrameEncoder encoder = new FrameEncoder();
        private final ByteArrayOutputStream out = new ByteArrayOutputStream();

        Shifted(long millis) {
            this.millis = millis;
        }

        byte[] pass(byte[] bytes) {
            out.reset();
            decoder.accept(bytes, 0, bytes.length);
            return out.toByteArray();
        }

        @Override
        public void readings(ReadingsView view) {
            Readings it = view.toReadings();
            out.writeBytes(encoder.encode(new Readings(
                    it.bootNumber(),
                    (it.boardMillis() + millis) % WRAP,
                    it.scan(),
                    it.contacts(),
                    it.amperes(),
                    it.firstChannel(),
                    it.readings())));
        }

        @Override
        public void message(int sequence, Message message) {
            out.writeBytes(encoder.encode((BoardMessage) message));
        }
    }
}
