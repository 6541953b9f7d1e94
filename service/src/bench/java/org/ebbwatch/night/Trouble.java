package org.ebbwatch.night;

import static org.ebbwatch.judge.FindingKind.AMBIENT_HIGH;
import static org.ebbwatch.judge.FindingKind.CUT_OFF;
import static org.ebbwatch.judge.FindingKind.HOT;
import static org.ebbwatch.judge.FindingKind.LEAD_OPEN;
import static org.ebbwatch.judge.FindingKind.LOAD_HOT;
import static org.ebbwatch.judge.FindingKind.LOAD_LOST;
import static org.ebbwatch.judge.FindingKind.LOAD_STUCK;
import static org.ebbwatch.judge.FindingKind.OVERDUE;
import static org.ebbwatch.judge.FindingKind.REBOUND;
import static org.ebbwatch.judge.FindingKind.REVERSED;
import static org.ebbwatch.judge.FindingKind.SENSOR_FAULT;
import static org.ebbwatch.judge.FindingKind.SILENT;
import static org.ebbwatch.judge.FindingKind.STALLED;
import static org.ebbwatch.judge.FindingKind.TIE_LOOSE;
import static org.ebbwatch.judge.FindingKind.WARMING;

import java.util.List;
import java.util.Set;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.sim.fault.FaultKind;

/**
 * What is wrong in a night, on the first of its two channels or on the whole board. Each kind says which findings it explains
 * from its onset on; a finding that it does not explain, and that the truth does not bear out either, is a false one.
 */
enum Trouble {
    /** Nothing at all. */
    NOTHING(null, false),
    /** A protection board opens at a random moment on the load. */
    CUTS_OFF(FaultKind.PROTECTION_CUT_OFF, false, CUT_OFF, LEAD_OPEN, LOAD_LOST, LOAD_STUCK),
    /** The cell came with its protection board, which opens where it always does. */
    PROTECTED(null, false, CUT_OFF, LEAD_OPEN, LOAD_LOST, LOAD_STUCK),
    LEAD_OFF(
            FaultKind.OPEN_LEAD,
            false,
            LEAD_OPEN,
            CUT_OFF,
            LOAD_LOST,
            LOAD_STUCK,
            REVERSED,
            STALLED,
            OVERDUE,
            REBOUND,
            TIE_LOOSE,
            SENSOR_FAULT),
    SENSE_OFF(
            FaultKind.OPEN_SENSE,
            false,
            LEAD_OPEN,
            CUT_OFF,
            LOAD_LOST,
            LOAD_STUCK,
            REVERSED,
            STALLED,
            OVERDUE,
            REBOUND,
            TIE_LOOSE,
            SENSOR_FAULT),
    LOAD_GONE(FaultKind.LOAD_LOST, false, LOAD_LOST, STALLED, OVERDUE),
    LOAD_WELDED(FaultKind.LOAD_STUCK, false, LOAD_STUCK, LEAD_OPEN),
    LOAD_WRONG(FaultKind.WRONG_LOAD, false, LOAD_LOST, STALLED, OVERDUE, WARMING, HOT, LOAD_HOT, CUT_OFF),
    CHARGER(
            FaultKind.CHARGER_LEAK,
            false,
            WARMING,
            HOT,
            STALLED,
            OVERDUE,
            LOAD_LOST,
            LOAD_STUCK,
            REBOUND,
            LEAD_OPEN,
            TIE_LOOSE),
    /** A resistance lies across the channel that is no load of it: dirt, a chafed lead. */
    LEAKS(FaultKind.CHARGER_LEAK, false, STALLED, OVERDUE, LOAD_STUCK, LEAD_OPEN),
    SENSOR_OFF(FaultKind.THERMISTOR_OFF, false, SENSOR_FAULT),
    SENSOR_OPEN(FaultKind.THERMISTOR_OPEN, false, SENSOR_FAULT),
    SENSOR_FROZEN(FaultKind.FROZEN_CELSIUS, false, SENSOR_FAULT),
    SENSOR_ABSURD(FaultKind.ABSURD_CELSIUS, false, SENSOR_FAULT),
    VOLTS_FROZEN(
            FaultKind.FROZEN_VOLTS,
            false,
            LOAD_LOST,
            LOAD_STUCK,
            STALLED,
            OVERDUE,
            LEAD_OPEN,
            CUT_OFF,
            REBOUND,
            TIE_LOOSE),
    /** The board compares its lead check with the reading, so that it errs too. */
    VOLTS_ABSURD(FaultKind.ABSURD_VOLTS, false, SENSOR_FAULT, LEAD_OPEN),
    WARMS(FaultKind.WARMING, false, WARMING, HOT, CUT_OFF, LOAD_LOST, SENSOR_FAULT, LEAD_OPEN),
    RUNS_AWAY(
            FaultKind.RUNAWAY,
            false,
            WARMING,
            HOT,
            SENSOR_FAULT,
            LEAD_OPEN,
            LOAD_LOST,
            LOAD_STUCK,
            CUT_OFF,
            REBOUND,
            STALLED,
            TIE_LOOSE,
            LOAD_HOT,
            AMBIENT_HIGH),
    SHORTS(
            FaultKind.INTERNAL_SHORT,
            false,
            WARMING,
            HOT,
            LEAD_OPEN,
            LOAD_STUCK,
            LOAD_LOST,
            STALLED,
            CUT_OFF,
            REBOUND,
            TIE_LOOSE),
    TIE_OPENS(FaultKind.LOOSE_TIE, false, TIE_LOOSE, LEAD_OPEN),
    TURNED(FaultKind.REVERSED, false, REVERSED, LEAD_OPEN, CUT_OFF, LOAD_LOST, LOAD_STUCK, SENSOR_FAULT, TIE_LOOSE),
    /** The two cells change places while the board is silent. */
    SWAPPED_UNSEEN(
            FaultKind.SWAPPED,
            true,
            STALLED,
            OVERDUE,
            TIE_LOOSE,
            SILENT,
            LEAD_OPEN,
            CUT_OFF,
            LOAD_LOST,
            LOAD_STUCK,
            REBOUND,
            REVERSED),
    ARRIVES_DISCONNECTED(null, false),
    ARRIVES_DEAD(null, false),
    ARRIVES_TURNED(null, false, REVERSED),
    BANK_HOT(FaultKind.HOT_BANK, true, LOAD_HOT),
    BOARD_SILENT(FaultKind.SILENT, true, SILENT),
    BOARD_RESTARTS(FaultKind.REBOOT, true, SILENT),
    /** One scan in so many is lost on the wire. */
    SCANS_LOST(null, true, SILENT),
    ROOM_WARMS(FaultKind.AMBIENT_RISE, true, AMBIENT_HIGH),
    SUN(FaultKind.SUN, true, AMBIENT_HIGH);

    private static final List<Stage> ANY =
            List.of(Stage.DRAINING, Stage.DRAINING, Stage.HOLD, Stage.REST, Stage.REST, Stage.TIED, Stage.PARTED);

    final FaultKind fault;
    final boolean ofBoard;

    @SuppressWarnings("ImmutableEnumChecker") // Set.of is
    private final Set<FindingKind> explains;

    Trouble(FaultKind fault, boolean ofBoard, FindingKind... explains) {
        this.fault = fault;
        this.ofBoard = ofBoard;
        this.explains = Set.of(explains);
    }

    boolean explains(FindingKind kind) {
        return explains.contains(kind);
    }

    /** Where in a passage it can begin, the likelier the more often it is named; empty where it is there from the start. */
    List<Stage> stages() {
        return switch (this) {
            case NOTHING, PROTECTED, ARRIVES_DISCONNECTED, ARRIVES_DEAD, ARRIVES_TURNED, SCANS_LOST -> List.of();
            case CUTS_OFF -> List.of(Stage.DRAINING, Stage.DRAINING, Stage.DRAINING, Stage.HOLD, Stage.REST);
            case LOAD_GONE, LOAD_WRONG, CHARGER -> List.of(Stage.DRAINING, Stage.DRAINING, Stage.HOLD);
            case LOAD_WELDED -> List.of(Stage.DRAINING, Stage.HOLD, Stage.REST);
            case TIE_OPENS -> List.of(Stage.TIED);
            case BANK_HOT -> List.of(Stage.DRAINING);
            default -> ANY;
        };
    }

    /** Whether it makes the cell hot, slowly or not. */
    boolean heats() {
        return this == WARMS || this == RUNS_AWAY || this == SHORTS;
    }

    /** Whether it takes the cell's temperature out of sight. */
    boolean blindsThermometer() {
        return this == SENSOR_OFF || this == SENSOR_OPEN || this == SENSOR_FROZEN || this == SENSOR_ABSURD;
    }

    boolean loosensLead() {
        return this == LEAD_OFF || this == SENSE_OFF;
    }
}
