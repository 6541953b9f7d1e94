package org.ebbwatch.evening.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ebbwatch.evening.rule.CellFacts.Switching;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;

/** What has to be so of one cell. */
final class CellPoints {
    private static final double COLDER_THAN_THE_ROOM_KELVIN = 5;
    private static final String RESISTORS = "Look at the resistor, its leads and its switch; they may be hot.";

    private final CellFacts cell;
    private final List<Point> points = new ArrayList<>();

    private CellPoints(CellFacts cell) {
        this.cell = cell;
    }

    static List<Point> of(CellFacts cell) {
        var its = new CellPoints(cell);
        its.load();
        its.lead();
        its.sensor();
        its.touch();
        return its.points;
    }

    // ---- its load ----

    private void load() {
        if (cell.stands(FindingKind.LOAD_STUCK)) {
            fail(
                    Matter.LOAD,
                    "a load that is off draws nothing",
                    "LOAD_STUCK stands",
                    "Take the load off by hand. " + RESISTORS);
        } else if (cell.stands(FindingKind.LOAD_LOST)) {
            fail(
                    Matter.LOAD,
                    "a load that is on draws",
                    "LOAD_LOST stands",
                    RESISTORS + " Then decide to drain again.");
        } else if (cell.phase() == Phase.DRAIN) {
            draining();
        } else if (cell.phase() == Phase.REST) {
            resting();
        } else if (cell.phase() == Phase.HELD && cell.loadOn()) {
            unknown(
                    Matter.LOAD,
                    "a load that is on opens when it is asked to",
                    "held with its load on: a load that is locked is not touched",
                    "Decide about the cell, or take its load off.");
        }
    }

    private void draining() {
        String expected = "the load that empties it is on and draws";
        if (!cell.loadOn()) {
            String toDo = cell.switching() == Switching.HANDS
                    ? "Put its load on and say so, or withdraw the cell."
                    : "Look why the board does not close it; the findings and alarms of the cell say more.";
            fail(Matter.LOAD, expected, "its load is off", toDo);
        } else if (cell.answer().isPresent()) {
            answered(cell.answer().get());
        } else if (cell.mayToggle()) {
            unknown(
                    Matter.LOAD,
                    "the load opens and closes again, and the cell answers",
                    "not asked yet",
                    "Wait, or check again.");
        } else if (cell.drew()) {
            pass(Matter.LOAD, expected, "drew since it went on; not opened: " + whyNotOpened());
        } else {
            unknown(
                    Matter.LOAD,
                    expected,
                    "on, and neither a sag nor a current was seen yet; not opened: " + whyNotOpened(),
                    RESISTORS + " Check again in half an hour.");
        }
    }

    private String whyNotOpened() {
        if (cell.switching() == Switching.HANDS) {
            return "hands put it on, and only hands can take it off";
        }
        if (cell.switching() == Switching.STRING) {
            return "it is the load of a string";
        }
        return cell.holding()
                ? "its hold could begin again; whether it opens shows when its rest begins"
                : "the judge does not let it close by itself now";
    }

    private void answered(LoadAnswer answer) {
        String expected = "the load opens and closes again, and the cell answers";
        switch (answer.kind()) {
            case ANSWERS -> pass(Matter.LOAD, expected, answer.seen());
            case TOO_FAINT -> faint(expected, answer);
            case STAYS_ON ->
                fail(
                        Matter.LOAD,
                        expected,
                        answer.seen(),
                        "The board does not open it. Take the load off by hand. " + RESISTORS);
            case NO_RESPONSE ->
                fail(
                        Matter.LOAD,
                        expected,
                        "the board says it opened, and the cell did not answer: " + answer.seen(),
                        "The contact may be welded, or the load draws nothing. Take the load off by hand. "
                                + RESISTORS);
            case STAYS_OPEN, DRAWS_NO_MORE ->
                fail(Matter.LOAD, expected, answer.seen(), "The cell is not being emptied. " + RESISTORS);
            case INTERRUPTED ->
                unknown(
                        Matter.LOAD,
                        expected,
                        "broken off: " + answer.seen(),
                        "See to the board and its line, then check again. The judge sees to the load by itself.");
        }
    }

    private void faint(String expected, LoadAnswer answer) {
        if (cell.drew()) {
            pass(Matter.LOAD, "the load that empties it is on and draws", "drew since it went on; " + answer.seen());
        } else {
            unknown(Matter.LOAD, expected, answer.seen(), "Measure across the resistor with a meter. It may be hot.");
        }
    }

    private void resting() {
        String expected = "nothing is across the cell";
        if (cell.loadOn()) {
            fail(Matter.LOAD, expected, "its load is on", "Take the load off by hand. " + RESISTORS);
        } else if (cell.recovered()) {
            pass(
                    Matter.LOAD,
                    expected,
                    "its voltage came back after the load went off; the load is not closed for a test, which would disturb the rest");
        } else {
            unknown(
                    Matter.LOAD,
                    expected,
                    "its voltage has not come back yet; the load is not closed for a test, which would disturb the rest",
                    "Check again an hour after its load went off.");
        }
    }

    // ---- its lead ----

    private void lead() {
        String expected = "the channel is attached to the cell";
        if (cell.stands(FindingKind.LEAD_OPEN)) {
            fail(
                    Matter.LEAD,
                    expected,
                    "LEAD_OPEN stands",
                    "Look at clips and leads without touching two at once, then decide to drain again.");
        } else if (cell.bonded()) {
            bonded();
        } else if (cell.loadOn()) {
            onItsLoad(expected);
        } else {
            checked(expected);
        }
    }

    private void bonded() {
        String expected = "the bond holds";
        if (cell.stands(FindingKind.TIE_LOOSE)) {
            fail(Matter.LEAD, expected, "TIE_LOOSE stands", "Make the bond again; if it sparks, say so.");
        } else {
            pass(Matter.LEAD, expected, "nothing across it; a bonded lead cannot be checked and need not be");
        }
    }

    private void onItsLoad(String expected) {
        boolean answers = cell.answer()
                .filter(answer -> answer.kind() == LoadAnswer.Kind.ANSWERS)
                .isPresent();
        if (cell.mayToggle() && cell.answer().isEmpty()) {
            unknown(Matter.LEAD, expected, "its load was not asked yet", "Wait, or check again.");
        } else if (answers) {
            pass(Matter.LEAD, expected, "the cell answered its load");
        } else if (cell.drew()) {
            pass(
                    Matter.LEAD,
                    expected,
                    "it sagged or a current flowed when its load went on; no lead check with a load on");
        } else {
            unknown(
                    Matter.LEAD,
                    expected,
                    "no lead check with a load on, and the cell did not answer it",
                    "Measure at the cell with a meter and compare with the channel.");
        }
    }

    private void checked(String expected) {
        String meter = "Measure at the cell with a meter and enter the reading.";
        if (cell.lead().isEmpty()) {
            unknown(Matter.LEAD, expected, "the board has not answered its lead check", meter);
        } else if (cell.lead().get() == LeadProof.ATTACHED) {
            pass(Matter.LEAD, expected, "the board's lead check found it attached just now");
        } else if (cell.lead().get() == LeadProof.OPEN) {
            fail(
                    Matter.LEAD,
                    expected,
                    "the board's lead check moved the channel: no cell is attached",
                    "Look at clips and leads without touching two at once.");
        } else {
            unknown(Matter.LEAD, expected, "the board cannot check leads here", meter);
        }
    }

    // ---- its sensor ----

    private void sensor() {
        String expected = "the temperature of the cell is believed";
        String toDo = "See to the sensor and its lead, then check again.";
        if (cell.stands(FindingKind.SENSOR_FAULT)) {
            fail(Matter.SENSOR, expected, "SENSOR_FAULT stands", toDo);
        } else if (Double.isNaN(cell.celsius())) {
            fail(Matter.SENSOR, expected, "no temperature is read", toDo);
        } else if (cell.celsius() < cell.ambientCelsius() - COLDER_THAN_THE_ROOM_KELVIN) {
            fail(Matter.SENSOR, expected, degrees() + ": far colder than the room", toDo);
        } else {
            pass(Matter.SENSOR, expected, degrees());
        }
    }

    private String degrees() {
        return Double.isNaN(cell.ambientCelsius())
                ? String.format(Locale.ROOT, "%.1f degC", cell.celsius())
                : String.format(Locale.ROOT, "%.1f degC in a room of %.1f degC", cell.celsius(), cell.ambientCelsius());
    }

    private void touch() {
        String expected = String.format(
                Locale.ROOT,
                "held between two fingers the sensor rises by %.0f K within a minute",
                TouchProof.LEAST_KELVIN);
        if (cell.touchedKelvin().isPresent()) {
            pass(
                    Matter.TOUCH,
                    expected,
                    String.format(
                            Locale.ROOT, "rose by %.1f K", cell.touchedKelvin().getAsDouble()));
        } else {
            unknown(
                    Matter.TOUCH,
                    expected,
                    "it did not rise, or nobody held it",
                    "Hold the sensor on its cell for a minute during a check, unless the cell is warm, leaking or swelling. If it does"
                            + " not rise, it has come off, is broken, or belongs to another channel.");
        }
    }

    // ---- writing down ----

    private void pass(Matter matter, String expected, String seen) {
        points.add(Point.passed(matter, cell.tag(), expected, seen).of(cell.passage()));
    }

    private void fail(Matter matter, String expected, String seen, String toDo) {
        points.add(Point.failed(matter, cell.tag(), expected, seen, toDo).of(cell.passage()));
    }

    private void unknown(Matter matter, String expected, String seen, String toDo) {
        points.add(Point.notProven(matter, cell.tag(), expected, seen, toDo).of(cell.passage()));
    }
}
