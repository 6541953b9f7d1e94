package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.util.List;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.paper.Canvas;

/** Voltage over time on a logarithmic scale, which shows the last hundredths of a volt as well as the first four. */
final class VoltagePlot {
    private static final double LOWEST = 0.001;
    private static final double HIGHEST = 5;
    private static final double[] LINES = {0.001, 0.01, 0.1, 1, 5};

    private final JsonObject record;
    private final Curve curve;
    private final Axis axis;

    VoltagePlot(JsonObject record, Curve curve, Axis axis) {
        this.record = record;
        this.curve = curve;
        this.axis = axis;
    }

    void on(Canvas canvas) throws IOException {
        float under = 36;
        Canvas plot = canvas.part(Axis.LEFT, under, canvas.width() - Axis.LEFT, canvas.height() - under - 26);
        axis.bands(plot, true);
        for (double volts : LINES) {
            plot.line(0, y(plot, volts), plot.width(), y(plot, volts), 0.3f, 0.7f);
            plot.textTo(
                    (volts == LOWEST ? "\u2264 " : "") + Figures.plain(volts) + " V", -4, y(plot, volts) - 2, 6.5f, 0);
        }
        axis.gaps(plot);
        limit(plot, "under load", record.object("procedure").object("drain").decimal("limitVolts"));
        limit(plot, "load off", record.object("procedure").object("rest").decimal("limitVolts"));
        List<Curve.Stretch> stretches = curve.stretches();
        plot.polyline(
                Traces.points(
                        stretches,
                        stretch -> axis.x(plot, stretch.fromMillis()),
                        stretch -> y(plot, stretch.lowVolts()),
                        stretch -> y(plot, stretch.highVolts())),
                0.9f,
                0);
        plot.frame(0, 0, plot.width(), plot.height(), 0.6f, 0);
        load(plot, stretches);
        axis.findings(plot);
        axis.ticks(plot, 14);
    }

    private static void limit(Canvas plot, String name, double volts) throws IOException {
        float y = y(plot, volts);
        plot.line(0, y, plot.width(), y, 0.8f, 0, 4, 2);
        String text = "limit " + name + ": " + Figures.plain(volts) + " V";
        float width = plot.widthOf(text, 6.5f);
        plot.fill(plot.width() - width - 8, y + 1.5f, width + 4, 7, 1);
        plot.textTo(text, plot.width() - 6, y + 3, 6.5f, 0);
    }

    private void load(Canvas plot, List<Curve.Stretch> stretches) throws IOException {
        for (Curve.Stretch stretch : stretches) {
            if (stretch.load()) {
                float from = axis.x(plot, stretch.fromMillis());
                plot.fill(from, -11, axis.x(plot, stretch.toMillis()) - from, 4, 0);
            }
        }
        plot.textTo("load", -4, -12, 6.5f, 0);
    }

    private static float y(Canvas plot, double volts) {
        double clipped = Math.max(LOWEST, Math.min(HIGHEST, volts));
        return (float) (plot.height() * Math.log(clipped / LOWEST) / Math.log(HIGHEST / LOWEST));
    }
}
