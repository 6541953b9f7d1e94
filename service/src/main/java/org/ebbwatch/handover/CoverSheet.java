package org.ebbwatch.handover;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.ebbwatch.evidence.signature.SignerKey;
import org.ebbwatch.paper.Canvas;
import org.ebbwatch.paper.Paper;

/** The covering sheet: what is handed over, the facts a receiver asks for, and lines for what only people know. */
final class CoverSheet {
    static final String FILE = "hand-over.pdf";

    private static final float SMALL = 8;

    private final List<HandedCell> cells;

    CoverSheet(List<HandedCell> cells) {
        this.cells = cells;
    }

    void write(Path folder) throws IOException {
        String newest =
                cells.stream().map(HandedCell::date).max(String::compareTo).orElseThrow();
        long made =
                LocalDate.parse(newest).atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli();
        try (var paper = new Paper("Hand-over of emptied cells", "Hand-over of " + cells.size() + " cell(s)", made)) {
            paper.block("H1", 62, this::banner);
            paper.skip(6);
            blanks(paper);
            table(paper);
            rules(paper);
            origin(paper);
            Files.write(folder.resolve(FILE), paper.finish());
        }
    }

    private void banner(Canvas canvas) throws IOException {
        long released = cells.stream().filter(HandedCell::isReleased).count();
        boolean all = released == cells.size();
        if (all) {
            canvas.frame(1.5f, 1.5f, canvas.width() - 3, canvas.height() - 3, 3, 0);
        } else {
            canvas.fill(0, 0, canvas.width(), canvas.height(), 0);
        }
        float ink = all ? 0 : 1;
        canvas.bold("Hand-over: " + cells.size() + " cell(s)", 14, canvas.height() - 30, 20, ink);
        canvas.text(
                all
                        ? "All of them were released as emptied. They still are dangerous goods."
                        : released + " released as emptied, " + (cells.size() - released)
                                + " NOT: treat those as charged and keep them apart.",
                14,
                15,
                10,
                ink);
        if (cells.stream().anyMatch(HandedCell::isSimulated)) {
            canvas.textTo("holds SIMULATED cells", canvas.width() - 14, canvas.height() - 28, 10, ink);
        }
    }

    private static void blanks(Paper paper) throws IOException {
        paper.heading("To be filled in by whoever hands over and whoever receives");
        String line = "____________________________________";
        paper.table(
                SMALL,
                new float[] {0.17f, 0.33f, 0.17f, 0.33f},
                List.of("Hands over", "", "Receives", ""),
                List.of(
                        List.of("Name, address", line, "Name, address", line),
                        List.of("Site or producer no.", line, "Permit no.", line),
                        List.of("UN number, marks", line, "Waste code", line),
                        List.of("Packing instruction", line, "Terminals insulated", line),
                        List.of("Gross mass, kg", line, "Safety sheet, 38.3", line),
                        List.of("Date, signature", line, "Date, signature", line)));
    }

    private void table(Paper paper) throws IOException {
        paper.heading("The cells");
        List<List<String>> rows = new ArrayList<>();
        for (HandedCell cell : cells) {
            rows.add(List.of(
                    cell.tag(),
                    cell.chemistry() + ", " + plain(cell.ratedAmpereHours()) + " Ah",
                    cell.noted("condition").isEmpty() ? "__________" : cell.noted("condition"),
                    cell.isReleased() ? "yes" : "NO, " + cell.phase(),
                    cell.lastVolts().map(volts -> volts.toPlainString() + " V").orElse("-"),
                    cell.restHours().map(hours -> hours.toPlainString() + " h").orElse("-"),
                    cell.wattHoursTaken().toPlainString() + " Wh",
                    cell.date()));
        }
        paper.table(
                7.5f,
                new float[] {0.18f, 0.19f, 0.12f, 0.13f, 0.09f, 0.08f, 0.1f, 0.11f},
                List.of("Tag", "Chemistry, rated", "Condition", "Emptied", "V + U", "Rested", "Taken out", "Date"),
                rows);
        paper.paragraph(
                "Emptied through a resistor; V + U is the last voltage with its expanded uncertainty (k = 2), rounded up. The bundle of"
                        + " each cell has every reading, the rule and its report; this sheet only sums up.",
                SMALL);
    }

    private static void rules(Paper paper) throws IOException {
        paper.heading("What people differ on");
        paper.paragraph(
                "General, and not decided here. The text in force, local codes, the carrier, the receiver and licensed practice come"
                        + " first.",
                SMALL);
        paper.table(7.5f, new float[] {0.15f, 0.29f, 0.31f, 0.25f}, Rules.HEADS, Rules.DIFFERENCES);
        paper.heading("Cautions");
        for (String caution : Rules.CAUTIONS) {
            paper.paragraph("\u2022 " + caution, SMALL);
        }
    }

    private void origin(Paper paper) throws IOException {
        paper.heading("The bundles");
        List<List<String>> rows = new ArrayList<>();
        TreeSet<String> signers = new TreeSet<>();
        for (HandedCell cell : cells) {
            rows.add(List.of(cell.facts().file().getFileName().toString(), cell.bundleId()));
            signers.add(cell.facts().signer().map(SignerKey::toString).orElse("nobody"));
        }
        paper.table(7.5f, new float[] {0.42f, 0.58f}, List.of("File", "Bundle id, also on the label"), rows);
        for (String signer : signers) {
            paper.paragraph("Signed by " + signer, SMALL);
        }
        paper.paragraph(
                "Check them with `ebbwatch verify --key KEY FILE`; get the key from the sender by another way than this sheet.",
                SMALL);
        paper.paragraph("END OF HAND-OVER", SMALL);
    }

    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }
}
