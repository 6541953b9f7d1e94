package org.ebbwatch.evidence.report;

import java.io.IOException;
import java.util.List;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.paper.Canvas;
import org.ebbwatch.paper.Paper;

/** The verdict at the head of the report, to be seen across a table: black on white for released, white on black for not. */
final class Banner {
    private static final float HEIGHT = 78;
    private static final float SIMULATED_HEIGHT = 20;
    private static final float LARGE = 33;

    private final JsonObject record;

    Banner(JsonObject record) {
        this.record = record;
    }

    void on(Paper paper) throws IOException {
        JsonObject outcome = record.object("outcome");
        boolean released = outcome.text("phase").equals("RELEASED");
        paper.block("P", 14, canvas -> {
            canvas.text(record.text("title"), 0, 4, 8.5f, 0.2f);
            canvas.textTo("Ebbwatch", canvas.width(), 4, 8.5f, 0.2f);
        });
        paper.block("H1", HEIGHT, canvas -> draw(canvas, released));
        if (record.truth("simulated")) {
            paper.block("P", SIMULATED_HEIGHT, this::simulated);
        }
    }

    private void draw(Canvas canvas, boolean released) throws IOException {
        float ink = released ? 0 : 1;
        if (released) {
            canvas.frame(1.5f, 1.5f, canvas.width() - 3, HEIGHT - 3, 3, 0);
        } else {
            canvas.fill(0, 0, canvas.width(), HEIGHT, 0);
        }
        canvas.bold(released ? "RELEASED" : "NOT RELEASED", 14, HEIGHT - 42, LARGE, ink);
        float tag = Math.max(
                0,
                Math.min(
                        16,
                        160
                                * 16
                                / Math.max(
                                        1, canvas.widthOf(record.object("item").text("tag"), 16))));
        canvas.textTo("Cell " + record.object("item").text("tag"), canvas.width() - 14, HEIGHT - 38, tag, ink);
        float y = 22;
        for (String line : released ? RELEASED : notReleased()) {
            canvas.text(fitting(canvas, line), 14, y, 9, ink);
            y -= 12;
        }
    }

    private static final List<String> RELEASED = List.of(
            "At every step V + U stayed below its limit: under load, rested with the load off, and parted after the leads were bonded.",
            "It was watched for warmth in between. It still is dangerous goods, and must never be charged again.");

    private List<String> notReleased() {
        JsonObject outcome = record.object("outcome");
        String state =
                switch (outcome.text("phase")) {
                    case "WITHDRAWN" -> "Withdrawn without a verdict: ";
                    case "HELD" -> "Held, a person must decide: ";
                    default -> "Not over, still in " + outcome.text("phase") + ": ";
                };
        return List.of(
                state + outcome.text("reason"), "Nothing here says that the cell is empty. Treat it as charged.");
    }

    private static String fitting(Canvas canvas, String line) throws IOException {
        String fits = line;
        while (canvas.widthOf(fits, 9) > canvas.width() - 28) {
            fits = fits.substring(0, fits.length() - 2) + "\u2026";
        }
        return fits;
    }

    private void simulated(Canvas canvas) throws IOException {
        canvas.hatch(0, 2, canvas.width(), 14, 0.8f);
        canvas.fill(60, 2, canvas.width() - 120, 14, 1);
        canvas.frame(0, 2, canvas.width(), 14, 0.6f, 0);
        canvas.textAt(
                "SIMULATED at " + record.number("simulatedSpeed")
                        + " times real time: no reading here comes from a cell",
                canvas.width() / 2,
                6,
                9,
                0);
    }
}
