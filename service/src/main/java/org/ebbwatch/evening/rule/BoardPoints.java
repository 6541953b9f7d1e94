package org.ebbwatch.evening.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What has to be so of one board. The bounds are common practice, no source. */
final class BoardPoints {
    private static final long LEAST_MILLIS = 600_000;
    private static final double MOST_BAD_SHARE = 0.01;
    private static final String CABLE = "Look at its plug, cable and supply.";

    private BoardPoints() {}

    static List<Point> of(BoardFacts board) {
        List<Point> points = new ArrayList<>(List.of(port(board), clock(board), ambient(board)));
        if (board.calibrations() > 0) {
            points.add(calibration(board));
        }
        return points;
    }

    private static Point port(BoardFacts board) {
        String expected =
                "connected, and for the last hour, or since the service began, no loss and hardly a damaged frame";
        if (!board.connected()) {
            return Point.failed(Matter.PORT, board.name(), expected, "not heard: " + board.detail(), CABLE);
        }
        double share = (double) board.badFrames() / Math.max(1, board.scans() + board.badFrames());
        String seen = String.format(
                Locale.ROOT,
                "%d scans in %d min, %.2f %% damaged, link lost %d times, silent %d times",
                board.scans(),
                board.watchedMillis() / 60_000,
                100 * share,
                board.losses(),
                board.silences());
        if (board.losses() > 0 || board.silences() > 0 || share > MOST_BAD_SHARE) {
            return Point.failed(
                    Matter.PORT, board.name(), expected, seen, CABLE + " Check again after an hour without a loss.");
        }
        if (board.watchedMillis() < LEAST_MILLIS) {
            return Point.notProven(
                    Matter.PORT, board.name(), expected, seen, "Check again when it has been watched for ten minutes.");
        }
        return Point.passed(Matter.PORT, board.name(), expected, seen);
    }

    private static Point clock(BoardFacts board) {
        String expected = "its clock runs as the host's does";
        return board.clockOdd()
                ? Point.failed(
                        Matter.BOARD_CLOCK,
                        board.name(),
                        expected,
                        "more than 1 % off: hold, rest and watch times do not count",
                        "Start the board again. If it happens again, replace it.")
                : Point.passed(Matter.BOARD_CLOCK, board.name(), expected, "nothing against it");
    }

    private static Point calibration(BoardFacts board) {
        String expected = "no calibration is older than twelve months";
        return board.oldCalibrations().isEmpty()
                ? Point.passed(
                        Matter.CALIBRATION, board.name(), expected, board.calibrations() + " calibrated, none too old")
                : Point.notProven(
                        Matter.CALIBRATION,
                        board.name(),
                        expected,
                        String.join(", ", board.oldCalibrations()),
                        "Calibrate them anew when no cell is on them, see docs/calibration.md. Until then they are read as before.");
    }

    private static Point ambient(BoardFacts board) {
        String expected = String.format(Locale.ROOT, "the room is measured and below %.0f degC", board.limitCelsius());
        if (Double.isNaN(board.celsius())) {
            return Point.failed(
                    Matter.AMBIENT,
                    board.name(),
                    expected,
                    "no ambient temperature is read",
                    "See to the ambient sensor: without it warm cells are found later.");
        }
        String seen = String.format(Locale.ROOT, "%.1f degC", board.celsius());
        return board.celsius() >= board.limitCelsius()
                ? Point.failed(
                        Matter.AMBIENT,
                        board.name(),
                        expected,
                        seen,
                        "Air the room, keep the sun off, and see what else heats it.")
                : Point.passed(Matter.AMBIENT, board.name(), expected, seen);
    }
}
