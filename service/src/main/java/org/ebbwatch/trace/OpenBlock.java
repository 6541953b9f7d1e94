package org.ebbwatch.trace;

import java.io.IOException;
import java.util.Arrays;
import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.ValueKinds;

/**
 * The scans of one board that are not sealed yet, column by column, so that a channel can be sealed or read without copying
 * rows. It takes scans of one boot and one shape for {@value #SPAN_MILLIS} ms of event time, at most {@link Samples#MOST}.
 * The columns are used again after {@link #clear}; appending allocates nothing but when they grow. Not thread-safe.
 */
final class OpenBlock {

    static final long SPAN_MILLIS = 600_000;

    private static final int FIRST_CAPACITY = 512;

    private BoardBoot boot;
    private int channels;
    private boolean withAmperes;
    private int count;
    private long[] scans = {};
    private long[] eventMillis = {};
    private Columns[] columns = {};

    boolean isEmpty() {
        return count == 0;
    }

    int count() {
        return count;
    }

    int channels() {
        return channels;
    }

    BoardBoot boot() {
        return boot;
    }

    long firstScan() {
        return scans[0];
    }

    long firstEventMillis() {
        return eventMillis[0];
    }

    long lastScan() {
        return scans[count - 1];
    }

    long lastEventMillis() {
        return eventMillis[count - 1];
    }

    /** Whether a scan belongs into this block; an empty block takes any. */
    boolean takes(BoardBoot itsBoot, ScanRow row) {
        return count == 0
                || (count < Samples.MOST
                        && row.eventMillis() - eventMillis[0] < SPAN_MILLIS
                        && itsBoot.equals(boot)
                        && row.channels() == channels
                        && (row.amperes() != null) == withAmperes);
    }

    void append(BoardBoot itsBoot, ScanRow row) {
        int[] amperes = row.amperes();
        if (count == 0) {
            boot = itsBoot;
            channels = row.channels();
            withAmperes = amperes != null;
        }
        if (count == 0 || count == scans.length) {
            grow();
        }
        scans[count] = row.scan();
        eventMillis[count] = row.eventMillis();
        int[] volts = row.volts();
        int[] celsius = row.celsius();
        byte[] states = row.states();
        for (int channel = 0; channel < channels; channel++) {
            Columns column = columns[channel];
            column.states[count] = states[channel];
            column.volts[count] = volts[channel];
            column.celsius[count] = celsius[channel];
            if (withAmperes) {
                column.amperes[count] = amperes[channel];
            }
        }
        count++;
    }

    void clear() {
        count = 0;
    }

    ValueKinds kinds() {
        return withAmperes ? boot.kinds() : boot.kinds().withoutAmperes();
    }

    /** The samples of one channel, not copied: good until the next call of {@link #append} or {@link #clear}. */
    Samples samples(int channel) {
        Columns column = columns[channel];
        return new Samples(
                kinds(), count, scans, eventMillis, column.states, column.volts, column.celsius, column.amperes);
    }

    /** A copy of what one channel read from the first to before the second event time; null if that is nothing. */
    Samples copy(int channel, long fromEventMillis, long toEventMillis) {
        int from = firstAt(fromEventMillis);
        int to = firstAt(toEventMillis);
        if (from >= to || channel >= channels) {
            return null;
        }
        Columns column = columns[channel];
        return new Samples(
                kinds(),
                to - from,
                Arrays.copyOfRange(scans, from, to),
                Arrays.copyOfRange(eventMillis, from, to),
                Arrays.copyOfRange(column.states, from, to),
                Arrays.copyOfRange(column.volts, from, to),
                Arrays.copyOfRange(column.celsius, from, to),
                withAmperes ? Arrays.copyOfRange(column.amperes, from, to) : column.amperes);
    }

    /** Hands out all scans row by row. */
    void replay(ScanSink sink) throws IOException {
        RowBuffer row = new RowBuffer();
        row.makeRoomFor(channels);
        row.withAmperes = withAmperes;
        for (int at = 0; at < count; at++) {
            row.bootNumber = boot.bootNumber();
            row.scan = scans[at];
            row.eventMillis = eventMillis[at];
            for (int channel = 0; channel < channels; channel++) {
                Columns column = columns[channel];
                row.states[channel] = column.states[at];
                row.volts[channel] = column.volts[at];
                row.celsius[channel] = column.celsius[at];
                if (withAmperes) {
                    row.amperes[channel] = column.amperes[at];
                }
            }
            sink.scan(boot, row);
        }
    }

    private int firstAt(long itsEventMillis) {
        int found = Arrays.binarySearch(eventMillis, 0, count, itsEventMillis);
        return found < 0 ? -found - 1 : found;
    }

    private void grow() {
        if (count == scans.length) {
            int capacity = Math.min(Math.max(2 * count, FIRST_CAPACITY), Samples.MOST);
            scans = Arrays.copyOf(scans, capacity);
            eventMillis = Arrays.copyOf(eventMillis, capacity);
        }
        while (columns.length < channels) {
            columns = Arrays.copyOf(columns, columns.length + 1);
            columns[columns.length - 1] = new Columns();
        }
        for (int channel = 0; channel < channels; channel++) {
            columns[channel].grow(scans.length, withAmperes);
        }
    }

    private static final class Columns {
        private byte[] states = {};
        private int[] volts = {};
        private int[] celsius = {};
        private int[] amperes = {};

        void grow(int capacity, boolean withAmperes) {
            if (states.length < capacity) {
                states = Arrays.copyOf(states, capacity);
                volts = Arrays.copyOf(volts, capacity);
                celsius = Arrays.copyOf(celsius, capacity);
            }
            if (withAmperes && amperes.length < capacity) {
                amperes = Arrays.copyOf(amperes, capacity);
            }
        }
    }
}
