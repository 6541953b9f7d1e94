package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * What an alarm can be about, in words a person understands at night. The names are those of the findings; SMOKE, MAINS_LOST,
 * HELD, STORAGE_FAULT, FLOOD and TEST are those that no finding stands for.
 *
 * <p>A latched alarm must be acknowledged and, once its condition is gone, reset by a person who has looked.
 */
public enum AlarmKind {
    HOT(
            FindingKind.HOT,
            Scope.PASSAGE,
            Manner.LATCHED_AND_LOUD,
            "A cell is hot.",
            "It may vent poisonous smoke, burn or burst, and take its neighbours with it.",
            "Keep away. Clear the room. Follow your local emergency plan. Touch nothing before the cell has been near the"
                    + " temperature of the room for an hour."),
    SMOKE(
            null,
            Scope.RACK,
            Manner.LATCHED_AND_LOUD,
            "Smoke is reported at the rack.",
            "A cell may be venting or burning; its smoke is poisonous. Loads that a board switches were opened.",
            "Keep away. Clear the room. Follow your local emergency plan. Go back only when those in charge say so."),
    REVERSED(
            FindingKind.REVERSED,
            Scope.PASSAGE,
            Manner.LATCHED,
            "A cell is driven below zero volts.",
            "Copper goes into solution and the cell may short inside, now or later.",
            "Keep away while it is warm. Make sure its load is off. Never charge this cell again. Decide about it by day."),
    LOAD_HOT(
            FindingKind.LOAD_HOT,
            Scope.BOARD,
            Manner.LATCHED,
            "A resistor bank is hot.",
            "It burns skin in seconds and can light what lies near it. The loads of its cells were opened.",
            "Touch nothing. Look that nothing lies on or near the resistors and that their fan runs. Follow your"
                    + " emergency plan if anything smokes."),
    CUT_OFF(
            FindingKind.CUT_OFF,
            Scope.PASSAGE,
            Manner.PLAIN,
            "A cell's terminals collapsed though it cannot be empty.",
            "A protection board or a disconnect inside has opened: the cell reads nought and still holds its charge.",
            "Treat it as a full cell. Do not bond its leads. By day: take the protection board off, or withdraw the cell."),
    LEAD_OPEN(
            FindingKind.LEAD_OPEN,
            Scope.SHARED,
            Manner.PLAIN,
            "A channel is not attached to its cell.",
            "Its voltage means nothing: the cell may be full. Its load was opened.",
            "Look at clips and leads without touching two at once. Attach the lead again and decide to drain again."),
    LOAD_LOST(
            FindingKind.LOAD_LOST,
            Scope.SHARED,
            Manner.PLAIN,
            "A load is on but draws nothing.",
            "The cell is not being emptied.",
            "Look at the resistor, its leads and its switch. They may be hot. Then decide to drain again."),
    LOAD_STUCK(
            FindingKind.LOAD_STUCK,
            Scope.SHARED,
            Manner.PLAIN,
            "A load is off but the cell does not recover.",
            "The switch may be stuck, or there is no cell on the channel: no rest can be judged.",
            "Take the load off by hand. Resistors may be hot. Look whether the cell is attached."),
    WARMING(
            FindingKind.WARMING,
            Scope.PASSAGE,
            Manner.PLAIN,
            "A cell is warmer than it should be.",
            "It may go on to get hot. A tied-off cell that warms is not empty, or shorts inside.",
            "Look at it from a distance. Have your emergency plan at hand. Do not handle it while it gets warmer."),
    TIE_LOOSE(
            FindingKind.TIE_LOOSE,
            Scope.PASSAGE,
            Manner.PLAIN,
            "The bond of a tied-off cell is loose.",
            "The cell is not held at zero and the time does not count.",
            "Make the bond again. If it sparks, say so: the cell is not empty."),
    SENSOR_FAULT(
            FindingKind.SENSOR_FAULT,
            Scope.SHARED,
            Manner.PLAIN,
            "A sensor cannot be believed.",
            "Here the watch is blind: heat may go unseen, and no time counts towards release.",
            "Go and look at the cell. Then see to the sensor and its lead, and do the touch test."),
    SILENT(
            FindingKind.SILENT,
            Scope.BOARD,
            Manner.PLAIN,
            "Nothing is heard from a board.",
            "None of its cells is being watched. Clocks stand still. A board that hears nobody opens its loads.",
            "Go and look at the cells. Check the board's power and its cable."),
    CLOCK_ODD(
            FindingKind.CLOCK_ODD,
            Scope.BOARD,
            Manner.PLAIN,
            "A board's clock runs wrong.",
            "Hold, rest and watch times of its cells do not count. Temperatures are still watched.",
            "Start the board again by day. If it happens again, replace the board."),
    AMBIENT_HIGH(
            FindingKind.AMBIENT_HIGH,
            Scope.RACK,
            Manner.PLAIN,
            "The room is warm.",
            "Cells and resistors get rid of less heat, and what a cell adds is harder to see.",
            "Air the room, keep the sun off, and see what else heats it."),
    MAINS_LOST(
            null,
            Scope.RACK,
            Manner.PLAIN,
            "The mains are gone.",
            "The rack runs on what its battery holds. When that is empty nobody watches, and fans and alarms may stand still.",
            "Go and look at the rack. See to the mains. If they stay away, take loads off while somebody is there."),
    HELD(
            null,
            Scope.SHARED,
            Manner.PLAIN,
            "A cell is held: a person must decide.",
            "Nothing goes on by itself. No load will close.",
            "Read why it is held. Look at the cell. Then decide to drain again or to withdraw it."),
    STORAGE_FAULT(
            null,
            Scope.RACK,
            Manner.PLAIN,
            "Records cannot be kept.",
            "Watching goes on, but what is seen now would be lost with the power, and no evidence grows.",
            "Make room on the disk, or see to it. Do not stop the service before that."),
    TEST(
            null,
            Scope.RACK,
            Manner.PLAIN,
            "This is a test of the alarms.",
            "Nothing is the matter. It shows whether an alarm would reach somebody tonight.",
            "Acknowledge it, and tell the evening check by which way it reached you."),
    FLOOD(
            null,
            Scope.RACK,
            Manner.LOUD,
            "So many alarms ring that they are told together.",
            "What is told together is not told singly any more. Danger still is.",
            "Look at the page or ask for the list of alarms: all of them stand there, those that need a person most first."),
    REBOUND(
            FindingKind.REBOUND,
            Scope.PASSAGE,
            Manner.PLAIN,
            "A cell's voltage came back.",
            "It is not empty yet.",
            "Nothing, where the board switches its load. Else put the load on again."),
    STALLED(
            FindingKind.STALLED,
            Scope.PASSAGE,
            Manner.PLAIN,
            "A cell's voltage does not fall as it should.",
            "Something may feed it, or its rating is wrong.",
            "Look for a charger or a second cell on its leads, and check its rating."),
    OVERDUE(
            FindingKind.OVERDUE,
            Scope.PASSAGE,
            Manner.PLAIN,
            "A cell takes longer to empty than it can account for.",
            "Something may feed it, or its rating or its resistor is not what was entered.",
            "Check resistor, rating and leads.");

    /** On how much of the rack one alarm of a kind can be. */
    enum Scope {
        /** Each passage has its own. */
        PASSAGE,
        /** Each passage its own, but one for the board where several of its passages begin it together. */
        SHARED,
        /** One for each board. */
        BOARD,
        /** One for the rack. */
        RACK
    }

    private enum Manner {
        PLAIN,
        /** Never to be put out of the way. */
        LOUD,
        LATCHED,
        /** Latched, and never to be put out of the way. */
        LATCHED_AND_LOUD
    }

    private final FindingKind finding;
    private final Scope scope;
    private final Manner manner;
    private final String what;
    private final String consequence;
    private final String toDo;

    AlarmKind(FindingKind finding, Scope scope, Manner manner, String what, String consequence, String toDo) {
        this.finding = finding;
        this.scope = scope;
        this.manner = manner;
        this.what = what;
        this.consequence = consequence;
        this.toDo = toDo;
    }

    /** The alarm of a finding. */
    public static AlarmKind of(FindingKind finding) {
        return valueOf(requireNonNull(finding).name());
    }

    /** How loudly it asks for a person. */
    public Urgency urgency() {
        if (finding != null) {
            return finding.urgency();
        }
        return switch (this) {
            case SMOKE -> Urgency.DANGER;
            // Its load is off, nothing goes on by itself, and what is dangerous about it has an alarm of its own.
            case HELD -> Urgency.ADVISORY;
            default -> Urgency.RINGING;
        };
    }

    /** Whether it must be reset by a person after its condition is gone. */
    public boolean isLatched() {
        return manner == Manner.LATCHED || manner == Manner.LATCHED_AND_LOUD;
    }

    /** Whether it may be shelved or taken out of service. */
    public boolean mayBeCovered() {
        return manner == Manner.PLAIN || manner == Manner.LATCHED;
    }

    Scope scope() {
        return scope;
    }

    /** What is the matter, in one sentence. */
    public String what() {
        return what;
    }

    /** What may come of it. */
    public String consequence() {
        return consequence;
    }

    /** What to do about it. */
    public String toDo() {
        return toDo;
    }
}
