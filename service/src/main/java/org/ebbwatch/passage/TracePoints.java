package org.ebbwatch.passage;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.trace.SampleVisitor;
import org.ebbwatch.trace.Stretch;
import org.ebbwatch.trace.TraceStore;
import org.ebbwatch.trace.codec.Sha256;

/** A passage's trace for a chart: of every stretch the readings at its ends, its peaks and its troughs. */
final class TracePoints {
    private static final int POINTS_PER_BUCKET = 8;

    private final PassageCard card;
    private final List<OnChannel> stays;
    private final TraceStore trace;
    private final long endMillis;

    /**
     * Points of one passage.
     *
     * @param stays where it was, in order
     * @param endMillis event time of its end, or of the last reading
     */
    TracePoints(PassageCard card, List<OnChannel> stays, TraceStore trace, long endMillis) {
        this.card = card;
        this.stays = stays;
        this.trace = trace;
        this.endMillis = endMillis;
    }

    /** About so many points of what lies in the window, in order. */
    List<TracePoint> thinned(Window window, int points) {
        long from = Math.max(window.fromMillis(), card.openedMillis());
        long to = Math.min(window.toMillis(), endMillis) + 1;
        if (to <= from) {
            return List.of();
        }
        var chart = new ChartPoints(from, to, Math.max(1, points / POINTS_PER_BUCKET));
        for (int i = 0; i < stays.size(); i++) {
            OnChannel stay = stays.get(i);
            long begin = Math.max(from, stay.fromMillis());
            long end = i + 1 < stays.size() ? Math.min(to, stays.get(i + 1).fromMillis()) : to;
            if (stay.string().isPresent()) {
                new ScanReader(card.board(), List.of(stay), trace)
                        .read(
                                begin,
                                end,
                                scan -> chart.add(
                                        scan.eventMillis(), scan.volts(), scan.celsius(), scan.loadApplied()));
            } else {
                trace.read(card.board(), stay.channel(), begin, end, new Single(stay.channel(), chart));
            }
        }
        return chart.points();
    }

    /** A cell that stands singly is read from its own channel alone, as {@link BoardWatch} reads it. */
    private final class Single implements SampleVisitor {
        private final int channel;
        private final ChartPoints chart;
        private final Map<Sha256, BoardScale> scales = new HashMap<>();
        private BoardScale scale;

        Single(int channel, ChartPoints chart) {
            this.channel = channel;
            this.chart = chart;
        }

        @Override
        public void stretch(Stretch stretch) {
            scale = scales.computeIfAbsent(stretch.identityHash(), hash -> trace.boot(hash)
                    .map(boot -> BasisText.read(boot.identity()).scale())
                    .orElseThrow(() -> new StorageException("what board " + card.board() + " said of itself is lost")));
        }

        @Override
        public void sample(long scan, long eventMillis, int state, int volts, int celsius, int amperes) {
            boolean believed = (state & (Reading.CELSIUS_VALID | Reading.SENSOR_OPEN)) == Reading.CELSIUS_VALID;
            chart.add(
                    eventMillis,
                    (state & Reading.VOLTS_VALID) != 0 ? scale.volts(channel, volts) : Double.NaN,
                    believed ? scale.celsius(celsius) : Double.NaN,
                    (state & Reading.LOAD_APPLIED) != 0);
        }
    }
}
