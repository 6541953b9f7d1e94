package org.ebbwatch.evidence.report;

import java.util.ArrayList;
import java.util.List;

/** The points of a curve: the lowest and the highest of every stretch in which something was read. */
final class Traces {
    /** Where nothing was read for so long the pen is lifted. */
    private static final long PAUSE_MILLIS = 60_000;

    private Traces() {}

    /** Where something lies on paper; NaN: nowhere. */
    @FunctionalInterface
    interface Place {
        float of(Curve.Stretch stretch);
    }

    static List<float[]> points(List<Curve.Stretch> stretches, Place x, Place low, Place high) {
        List<float[]> points = new ArrayList<>();
        long lastMillis = Long.MIN_VALUE;
        for (Curve.Stretch stretch : stretches) {
            float bottom = low.of(stretch);
            float top = high.of(stretch);
            if (Float.isNaN(bottom)) {
                continue;
            }
            if (!points.isEmpty() && stretch.fromMillis() - lastMillis > PAUSE_MILLIS) {
                points.add(null);
            }
            lastMillis = stretch.toMillis();
            float at = x.of(stretch);
            points.add(new float[] {at, bottom});
            if (top != bottom) {
                points.add(new float[] {at, top});
            }
        }
        return points;
    }
}
