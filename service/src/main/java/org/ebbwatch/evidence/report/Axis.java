package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.paper.Canvas;

/** The time axis that both plots share, with what happened along it: phases, findings, gaps. */
final class Axis {
    /** What the signs in the plots mean. */
    static final String KEY =
            "Grey and white bands: phases. Numbered triangles: findings, listed on the next page. Hatched: gaps in"
                    + " the readings. Black bar under the voltage: load on. Dashed lines: limits.";

    static final float LEFT = 34;

    private static final long[] STEPS = {
        10_000,
        60_000,
        120_000,
        300_000,
        600_000,
        1_800_000,
        3_600_000,
        7_200_000,
        14_400_000,
        21_600_000,
        43_200_000,
        86_400_000,
        172_800_000,
        432_000_000,
        864_000_000
    };
    private static final int TICKS_MOST = 12;
    private static final long HOUR = 3_600_000;

    private final JsonObject record;
    private final long beginMillis;
    private final long endMillis;
    private final List<Band> bands = new ArrayList<>();

    private record Band(String phase, long fromMillis, long toMillis) {}

    Axis(JsonObject record, Curve curve) {
        this.record = record;
        this.beginMillis = record.object("dates").number("checkedInEventMillis");
        this.endMillis = Math.max(beginMillis + 60_000, curve.lastMillis());
        String phase = "CHECK_IN";
        long from = beginMillis;
        for (JsonObject change : record.objects("phases")) {
            long to = Math.min(endMillis, change.number("eventMillis"));
            bands.add(new Band(phase, from, to));
            phase = change.text("to");
            from = to;
        }
        bands.add(new Band(phase, from, endMillis));
    }

    float x(Canvas plot, long eventMillis) {
        double share = (double) (eventMillis - beginMillis) / (endMillis - beginMillis);
        return (float) (plot.width() * Math.max(0, Math.min(1, share)));
    }

    /** Phases as bands behind the curves, their names above. */
    void bands(Canvas plot, boolean named) throws IOException {
        float free = 0;
        for (int i = 0; i < bands.size(); i++) {
            Band band = bands.get(i);
            float from = x(plot, band.fromMillis());
            float to = x(plot, band.toMillis());
            if (i % 2 == 0) {
                plot.fill(from, 0, to - from, plot.height(), 0.92f);
            }
            String name = band.phase().replace('_', ' ');
            float width = plot.widthOf(name, 6.5f);
            float middle = (from + to) / 2;
            if (named && to - from > width + 2 && middle - width / 2 > free) {
                plot.textAt(name, middle, plot.height() + 3, 6.5f, 0);
                free = middle + width / 2 + 3;
            }
        }
    }

    /** Gaps across the plot. */
    void gaps(Canvas plot) throws IOException {
        for (JsonObject gap : record.objects("gaps")) {
            long to = gap.number("eventMillis");
            float from = x(plot, to - gap.number("leastMillis"));
            plot.hatch(from, 0, Math.max(1.5f, x(plot, to) - from), plot.height(), 0.35f);
        }
    }

    /** Findings as numbered triangles above the plot. */
    void findings(Canvas plot) throws IOException {
        float free = 0;
        int number = 0;
        for (JsonObject finding : record.objects("findings")) {
            number++;
            float x = x(plot, finding.number("eventMillis"));
            plot.marker(x, plot.height() + 11, 5, 0);
            if (x - 3 > free) {
                plot.textAt(Integer.toString(number), x, plot.height() + 18, 6.5f, 0);
                free = x + 6;
            }
        }
    }

    /** Ticks and numbers below the plot, {@code drop} points under it. */
    void ticks(Canvas plot, float drop) throws IOException {
        long step = STEPS[STEPS.length - 1];
        for (int i = STEPS.length - 1; i >= 0 && (endMillis - beginMillis) / STEPS[i] <= TICKS_MOST; i--) {
            step = STEPS[i];
        }
        boolean minutes = step < HOUR;
        for (long at = 0; at <= endMillis - beginMillis; at += step) {
            float x = x(plot, beginMillis + at);
            plot.line(x, -drop, x, -drop - 3, 0.5f, 0);
            plot.textAt(Figures.plain(at / (minutes ? 60_000.0 : HOUR)), x, -drop - 11, 6.5f, 0);
        }
        plot.textTo(minutes ? "minutes since check-in" : "hours since check-in", plot.width(), -drop - 20, 6.5f, 0);
    }
}
