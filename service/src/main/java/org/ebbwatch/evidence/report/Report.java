package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.paper.Paper;

/**
 * Puts a passage on paper. The first page holds what decides: the verdict, the voltages against their limits, and the curves; what
 * follows says how it came about and how far it may be believed. Where ISO/IEC 17025:2017 7.8 asks for a thing it has its place.
 */
public final class Report {
    private static final float SMALL = 8;
    private static final int MOST_ROWS = 24;

    private final JsonObject record;
    private final Curve curve;
    private final Paper paper;
    private final long beginMillis;

    private Report(JsonObject record, Curve curve, Paper paper) {
        this.record = record;
        this.curve = curve;
        this.paper = paper;
        this.beginMillis = record.object("dates").number("checkedInEventMillis");
    }

    /**
     * The report of a record as the bytes of a PDF; the same record and curve make the same bytes.
     *
     * @param record {@code record.json}
     * @param curve of the trace
     * @param signer the key of whoever signs the bundle, as people compare it
     */
    public static byte[] of(JsonObject record, Curve curve, String signer) throws IOException {
        long made = Instant.parse(record.object("dates").text("lastEntryUtc")).toEpochMilli();
        String mark = "Passage " + record.text("passage");
        try (var paper = new Paper(record.text("title"), mark, made)) {
            var report = new Report(record, curve, paper);
            report.front();
            report.course();
            report.rules(signer);
            return paper.finish();
        }
    }

    private void front() throws IOException {
        new Banner(record).on(paper);
        paper.skip(6);
        facts();
        results();
        Axis axis = new Axis(record, curve);
        paper.heading("Voltage at the terminals");
        paper.figure(
                "Voltage over time on a logarithmic scale, with the limits; the table of results has the numbers.",
                186,
                canvas -> new VoltagePlot(record, curve, axis).on(canvas));
        paper.heading("Temperature");
        paper.figure(
                "Temperature of the cell and of its surroundings over time; findings give what was too warm.",
                128,
                canvas -> new TemperaturePlot(curve, axis).on(canvas));
        paper.paragraph(Axis.KEY, 7);
    }

    private void facts() throws IOException {
        JsonObject item = record.object("item");
        JsonObject dates = record.object("dates");
        JsonObject procedure = record.object("procedure");
        JsonObject outcome = record.object("outcome");
        String load = Figures.plain(item.decimal("loadOhms")) + " \u03a9, switched by "
                + (item.truth("switched") ? "the board" : "hand");
        long lasted = curve.lastMillis() - beginMillis;
        paper.table(
                SMALL,
                new float[] {0.13f, 0.40f, 0.15f, 0.32f},
                List.of("The cell", "", "The test", ""),
                List.of(
                        List.of("Tag", item.text("tag"), "Checked in", Figures.wall(dates.text("checkedInUtc"))),
                        List.of(
                                "Chemistry",
                                Words.ofConstant(item.text("chemistry")) + ", rated "
                                        + Figures.plain(item.decimal("ratedAmpereHours")) + " Ah",
                                "Last entry",
                                Figures.wall(dates.text("lastEntryUtc"))),
                        List.of("Load", load, "Lasted", Figures.lasting(Math.max(0, lasted)) + " by the board's clock"),
                        List.of(
                                "Place",
                                "board " + item.text("board") + ", channel " + item.number("channel"),
                                "Procedure",
                                procedure.text("name") + ", version " + procedure.number("version")),
                        List.of(
                                "Taken out",
                                Figures.places(outcome.decimal("ampereHours"), 4) + " Ah, "
                                        + Figures.places(outcome.decimal("wattHours"), 4) + " Wh",
                                "Drained",
                                outcome.number("rounds") + " time(s)")));
    }

    /** What was noted at check-in, where anything was. */
    private void intake() throws IOException {
        if (record.object("item").isNull("intake")) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        record.object("item").object("intake").map().forEach((key, noted) -> {
            if (noted != null) {
                rows.add(List.of(Words.ofKey(key.toString()), noted.toString()));
            }
        });
        paper.heading("Noted at check-in");
        table(new float[] {0.3f, 0.7f}, List.of("What", "Noted"), rows, "item");
    }

    private void results() throws IOException {
        paper.heading("Results against their limits");
        new Results(record).on(paper, SMALL);
    }

    private void course() throws IOException {
        intake();
        paper.heading("Phases");
        List<List<String>> phases = new ArrayList<>();
        for (JsonObject phase : record.objects("phases")) {
            phases.add(List.of(
                    at(phase),
                    Figures.wall(phase.text("wallUtc")),
                    phase.text("from") + " to " + phase.text("to"),
                    phase.text("reason")));
        }
        table(
                new float[] {0.12f, 0.24f, 0.24f, 0.40f},
                List.of("After", "Wall time", "Phase", "Because"),
                phases,
                "phases");
        findings();
        gaps();
    }

    private void findings() throws IOException {
        paper.heading("Findings");
        List<List<String>> findings = new ArrayList<>();
        for (JsonObject finding : record.objects("findings")) {
            String cleared = finding.isNull("cleared")
                    ? "stands"
                    : after(finding.object("cleared").number("eventMillis"));
            findings.add(List.of(
                    Integer.toString(findings.size() + 1),
                    at(finding),
                    finding.text("kind"),
                    finding.text("phase"),
                    finding.text("line"),
                    cleared));
        }
        table(
                new float[] {0.05f, 0.11f, 0.16f, 0.12f, 0.43f, 0.13f},
                List.of("No.", "After", "Kind", "In phase", "What was seen", "Cleared after"),
                findings,
                "findings");
    }

    private void gaps() throws IOException {
        paper.heading("Gaps in the readings");
        List<List<String>> gaps = new ArrayList<>();
        for (JsonObject gap : record.objects("gaps")) {
            gaps.add(List.of(
                    at(gap),
                    Figures.wall(gap.text("wallUtc")),
                    Figures.lasting(gap.number("leastMillis")),
                    Figures.lasting(gap.number("mostMillis"))));
        }
        table(
                new float[] {0.2f, 0.3f, 0.25f, 0.25f},
                List.of("Ended after", "Wall time", "Lasted at least", "At most"),
                gaps,
                "gaps");
    }

    private void table(float[] shares, List<String> heads, List<List<String>> rows, String key) throws IOException {
        if (rows.isEmpty()) {
            paper.paragraph("None.", SMALL);
            return;
        }
        paper.table(SMALL, shares, heads, rows.subList(0, Math.min(MOST_ROWS, rows.size())));
        if (rows.size() > MOST_ROWS) {
            paper.paragraph(
                    "And " + (rows.size() - MOST_ROWS) + " more of " + rows.size() + ", all in record.json under " + key
                            + ".",
                    SMALL);
        }
    }

    private void rules(String signer) throws IOException {
        paper.heading("Decision rule (ISO/IEC 17025:2017, 7.8.6)");
        paper.paragraph(record.text("decisionRule"), SMALL);
        paper.heading("Uncertainty");
        paper.paragraph(record.text("uncertainty") + ". No uncertainty is stated for charge and energy.", SMALL);
        paper.heading("What a reader must know");
        for (String caution : record.texts("cautions")) {
            paper.paragraph("\u2022 " + caution, SMALL);
        }
        for (String caution : Standing.CAUTIONS) {
            paper.paragraph("\u2022 " + caution, SMALL);
        }
        paper.heading("Scope and origin");
        JsonObject madeBy = record.object("madeBy");
        paper.paragraph(Standing.ITEMS_TESTED, SMALL);
        paper.paragraph(
                "Made by " + madeBy.text("software") + ", judge version " + madeBy.number("judgeVersion")
                        + ", of the record of this passage; every number here is in record.json of the same bundle.",
                SMALL);
        paper.paragraph("The bundle is signed by the key " + signer, SMALL);
        paper.paragraph(Standing.BY_HAND, SMALL);
        paper.skip(10);
        paper.paragraph(Standing.LINES, SMALL);
        paper.skip(4);
        paper.paragraph(record.text("end").replace("RECORD", "REPORT"), SMALL);
    }

    private String at(JsonObject event) {
        return after(event.number("eventMillis"));
    }

    private String after(long eventMillis) {
        return Figures.lasting(eventMillis - beginMillis);
    }
}
