package org.ebbwatch.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.ebbwatch.trace.codec.ValueKinds;

/** Made-up scans, and what was read back of them. */
final class Scans {

    static final String BOARD = "RIG-0001";
    static final BoardBoot BOOT = new BoardBoot(BOARD, 1, ValueKinds.COUNTS, "{\"nanovoltsPerCount\": 100000}");

    private Scans() {}

    /** A scan whose every reading tells board, scan and channel apart, without amperes. */
    static RowBuffer row(long bootNumber, long scan, long eventMillis, int channels) {
        RowBuffer row = new RowBuffer();
        row.makeRoomFor(channels);
        row.bootNumber = bootNumber;
        row.scan = scan;
        row.eventMillis = eventMillis;
        Random noise = new Random(scan);
        for (int channel = 0; channel < channels; channel++) {
            row.states[channel] = (byte) (scan % 100 < 50 ? 3 : 35);
            row.volts[channel] = 1000 * channel + noise.nextInt(5);
            row.celsius[channel] = (int) eventMillis;
            row.amperes[channel] = -channel;
        }
        return row;
    }

    /** Appends one scan a second: scans first to last, event time a thousand times the scan. */
    static void append(TraceStore trace, long first, long last, int channels) {
        for (long scan = first; scan <= last; scan++) {
            trace.append(BOARD, row(1, scan, 1000 * scan, channels));
        }
    }

    /** One sample as it was read back. */
    record Sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes) {}

    static List<Sample> read(TraceStore trace, int channel, long from, long to) {
        List<Sample> samples = new ArrayList<>();
        trace.read(
                BOARD,
                channel,
                from,
                to,
                (scan, eventMillis, state, volts, celsius, amperes) ->
                        samples.add(new Sample(scan, eventMillis, state, volts, celsius, amperes)));
        return samples;
    }

    static List<Sample> readAll(TraceStore trace, int channel) {
        return read(trace, channel, Long.MIN_VALUE, Long.MAX_VALUE);
    }

    /** What {@link #append} put in. */
    static List<Sample> expected(long first, long last, int channels, int channel) {
        List<Sample> samples = new ArrayList<>();
        for (long scan = first; scan <= last; scan++) {
            samples.add(sample(row(1, scan, 1000 * scan, channels), channel));
        }
        return samples;
    }

    static Sample sample(ScanRow row, int channel) {
        return new Sample(
                row.scan(),
                row.eventMillis(),
                row.states()[channel] & 0xFF,
                row.volts()[channel],
                row.celsius()[channel],
                row.amperes() == null ? 0 : row.amperes()[channel]);
    }
}
