package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.paper.Paper;

/** The voltages each step rested on against their limits, and how long and how warm rest and soak were. */
final class Results {
    private final JsonObject record;

    Results(JsonObject record) {
        this.record = record;
    }

    void on(Paper paper, float size) throws IOException {
        List<List<String>> rows = new ArrayList<>();
        int round = 0;
        for (JsonObject result : record.objects("results")) {
            String name =
                    switch (result.text("what")) {
                        case "underLoad" -> "under load, held, round " + ++round;
                        case "rested" -> "load off, when the rest ended";
                        default -> "parted, after the soak";
                    };
            rows.add(voltage(name, result));
        }
        if (!record.isNull("restPeak")) {
            rows.add(voltage("load off, highest of the last rest", record.object("restPeak")));
        }
        if (rows.isEmpty()) {
            paper.paragraph("No step towards release was reached: there is no voltage to hold against a limit.", size);
        } else {
            paper.table(
                    size,
                    new float[] {0.32f, 0.13f, 0.14f, 0.13f, 0.12f, 0.16f},
                    List.of("Voltage", "V", "U (k = 2)", "V + U", "limit", "V + U < limit"),
                    rows);
        }
        List<List<String>> times = times();
        if (!times.isEmpty()) {
            paper.table(
                    size,
                    new float[] {0.32f, 0.2f, 0.2f, 0.28f},
                    List.of("Watched", "for", "at least wanted", "warmest"),
                    times);
        }
    }

    private static List<String> voltage(String name, JsonObject result) {
        double volts = result.decimal("volts");
        double expanded = result.decimal("expandedVolts");
        String uncertainty = Figures.uncertainty(expanded);
        String sum = BigDecimal.valueOf(volts + expanded)
                .setScale(new BigDecimal(uncertainty).scale(), RoundingMode.CEILING)
                .toPlainString();
        return List.of(
                name,
                Figures.result(volts, expanded) + " V",
                uncertainty + " V",
                sum + " V",
                Figures.plain(result.decimal("limitVolts")) + " V",
                result.truth("below") ? "yes" : "NO");
    }

    private List<List<String>> times() {
        JsonObject procedure = record.object("procedure");
        List<List<String>> rows = new ArrayList<>();
        stay("REST", "load off, resting", procedure.object("rest").number("leastMillis"), "", rows);
        stay(
                "TIE_OFF",
                "leads bonded (soak), then parted",
                procedure.object("tieOff").number("watchMillis")
                        + procedure.object("tieOff").number("openMillis"),
                warmest(),
                rows);
        return rows;
    }

    /** The last complete stay in a phase. */
    private void stay(String phase, String name, long leastMillis, String warmest, List<List<String>> rows) {
        long from = Long.MIN_VALUE;
        long lasted = -1;
        for (JsonObject change : record.objects("phases")) {
            if (change.text("to").equals(phase)) {
                from = change.number("eventMillis");
            } else if (change.text("from").equals(phase)) {
                lasted = change.number("eventMillis") - from;
            }
        }
        if (lasted >= 0) {
            rows.add(List.of(name, Figures.lasting(lasted), Figures.set(leastMillis), warmest));
        }
    }

    private String warmest() {
        if (record.isNull("soak")) {
            return "";
        }
        JsonObject soak = record.object("soak");
        JsonObject heat = record.object("procedure").object("heat");
        double limit = heat.decimal("tieOffWarmKelvin");
        if (!Double.isNaN(soak.decimal("highestAboveReferenceKelvin"))) {
            return kelvin(soak.decimal("highestAboveReferenceKelvin")) + " K over the dummy cell, WARMING from "
                    + Figures.plain(limit) + " K";
        }
        if (!Double.isNaN(soak.decimal("highestAboveAmbientKelvin"))) {
            return kelvin(soak.decimal("highestAboveAmbientKelvin")) + " K over ambient, WARMING from "
                    + Figures.plain(limit + heat.decimal("withoutDummyKelvin")) + " K";
        }
        return "not read";
    }

    /** With the uncertainty the board states for its temperatures, where it states one. */
    private String kelvin(double kelvin) {
        List<JsonObject> calibrations = record.objects("calibrations");
        double expanded = calibrations.isEmpty()
                ? 0
                : calibrations.get(calibrations.size() - 1).number("expandedCelsiusMicrokelvin") / 1e6;
        return expanded > 0
                ? Figures.result(kelvin, expanded) + " \u00b1 " + Figures.uncertainty(expanded)
                : Figures.places(kelvin, 1);
    }
}
