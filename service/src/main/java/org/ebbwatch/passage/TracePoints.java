package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.trace.plot.PlotThinning;

/** A passage's trace for a chart: of every stretch the readings at its ends, its peaks and its troughs. */
final class TracePoints {
    private static final int POINTS_PER_BUCKET = 8;

    private final PassageCard card;
    private final ScanReader reader;
    private final long endMillis;

    /**
     * Points of one passage.
     *
     * @param reader of its readings
     * @param endMillis event time of its end, or of the last reading
     */
    TracePoints(PassageCard card, ScanReader reader, long endMillis) {
        this.card = card;
        this.reader = reader;
        this.endMillis = endMillis;
    }

    /** About so many points of what lies in the window, in order. */
    List<TracePoint> thinned(Window window, int points) {
        long from = Math.max(window.fromMillis(), card.openedMillis());
        long to = Math.min(window.toMillis(), endMillis) + 1;
        if (to <= from) {
            return List.of();
        }
        int buckets = Math.max(1, points / POINTS_PER_BUCKET);
        var volts = new PlotThinning(from, to, buckets);
        var celsius = new PlotThinning(from, to, buckets);
        reader.read(from, to, scan -> {
            volts.add(scan.eventMillis(), scan.volts());
            celsius.add(scan.eventMillis(), scan.celsius());
        });
        Set<Long> kept = new HashSet<>();
        for (PlotThinning thinning : List.of(volts, celsius)) {
            for (long millis : thinning.points().eventMillis()) {
                kept.add(millis);
            }
        }
        List<TracePoint> thinned = new ArrayList<>(kept.size());
        reader.read(from, to, scan -> {
            if (kept.contains(scan.eventMillis())) {
                thinned.add(new TracePoint(scan.eventMillis(), scan.volts(), scan.celsius(), scan.loadApplied()));
            }
        });
        return thinned;
    }
}
