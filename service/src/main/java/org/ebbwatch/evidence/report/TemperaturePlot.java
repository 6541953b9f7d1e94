package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.util.List;
import org.ebbwatch.paper.Canvas;

/** Temperature over time: the cell's in black, its surroundings' dashed. */
final class TemperaturePlot {
    private static final double LEAST_SPAN = 20;
    private static final double STEP = 10;

    private final Curve curve;
    private final Axis axis;

    TemperaturePlot(Curve curve, Axis axis) {
        this.curve = curve;
        this.axis = axis;
    }

    void on(Canvas canvas) throws IOException {
        Canvas plot = canvas.part(Axis.LEFT, 22, canvas.width() - Axis.LEFT, canvas.height() - 32);
        List<Curve.Stretch> stretches = curve.stretches();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Curve.Stretch stretch : stretches) {
            low = lower(lower(low, stretch.lowCelsius()), stretch.lowAmbientCelsius());
            high = -lower(lower(-high, -stretch.highCelsius()), -stretch.highAmbientCelsius());
        }
        axis.bands(plot, false);
        if (low > high) {
            plot.textAt("no temperature was read", plot.width() / 2, plot.height() / 2, 8, 0);
        } else {
            double bottom = STEP * Math.floor(low / STEP);
            double top = Math.max(bottom + LEAST_SPAN, STEP * Math.ceil(high / STEP));
            curves(plot, stretches, bottom, top);
        }
        plot.frame(0, 0, plot.width(), plot.height(), 0.6f, 0);
        axis.ticks(plot, 0);
        legend(plot);
    }

    private void curves(Canvas plot, List<Curve.Stretch> stretches, double bottom, double top) throws IOException {
        double step = top - bottom > 60 ? 2 * STEP : STEP;
        for (double celsius = bottom; celsius <= top; celsius += step) {
            float y = y(plot, celsius, bottom, top);
            plot.line(0, y, plot.width(), y, 0.3f, 0.7f);
            plot.textTo(Figures.plain(celsius) + " \u00b0C", -4, y - 2, 6.5f, 0);
        }
        axis.gaps(plot);
        plot.polyline(
                Traces.points(
                        stretches,
                        stretch -> axis.x(plot, stretch.fromMillis()),
                        stretch -> y(plot, stretch.lowAmbientCelsius(), bottom, top),
                        stretch -> y(plot, stretch.lowAmbientCelsius(), bottom, top)),
                0.8f,
                0.35f,
                3,
                2);
        plot.polyline(
                Traces.points(
                        stretches,
                        stretch -> axis.x(plot, stretch.fromMillis()),
                        stretch -> y(plot, stretch.lowCelsius(), bottom, top),
                        stretch -> y(plot, stretch.highCelsius(), bottom, top)),
                0.9f,
                0);
    }

    private static void legend(Canvas plot) throws IOException {
        float y = plot.height() + 5;
        plot.line(0, y + 2, 22, y + 2, 0.9f, 0);
        plot.text("the cell", 26, y, 6.5f, 0);
        plot.line(70, y + 2, 92, y + 2, 0.8f, 0.35f, 3, 2);
        plot.text("ambient", 96, y, 6.5f, 0);
    }

    private static float y(Canvas plot, double celsius, double bottom, double top) {
        return (float) (plot.height() * (celsius - bottom) / (top - bottom));
    }

    private static double lower(double one, double other) {
        return other < one ? other : one;
    }
}
