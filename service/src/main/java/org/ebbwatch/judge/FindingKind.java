package org.ebbwatch.judge;

import static org.ebbwatch.judge.FindingKind.LoadRule.KEEP;
import static org.ebbwatch.judge.FindingKind.LoadRule.OPEN;
import static org.ebbwatch.judge.FindingKind.Urgency.ADVISORY;
import static org.ebbwatch.judge.FindingKind.Urgency.DANGER;
import static org.ebbwatch.judge.FindingKind.Urgency.RINGING;

/** What the judge can see. Each kind says how urgent it is, what becomes of the load and whether it locks the load open. */
public enum FindingKind {
    /** The voltage came back above the rested limit with the load off. */
    REBOUND(ADVISORY, KEEP, false),
    /** Warmer than the phase allows, or on the way to HOT. */
    WARMING(RINGING, KEEP, false),
    /** At a trip temperature or heating like a failing cell. */
    HOT(DANGER, OPEN, true),
    /** Charge should have left but the voltage does not fall. */
    STALLED(ADVISORY, KEEP, false),
    /** The terminals collapsed while the cell cannot be empty: a protection board or disconnect opened. */
    CUT_OFF(RINGING, KEEP, true),
    /** The load is applied but draws nothing. */
    LOAD_LOST(RINGING, OPEN, false),
    /** The load is off but the voltage does not recover. */
    LOAD_STUCK(RINGING, OPEN, false),
    /** The channel is not attached to its cell. */
    LEAD_OPEN(RINGING, OPEN, true),
    /** The cell is driven below zero volts. */
    REVERSED(DANGER, OPEN, true),
    /** The bond of a tied-off cell does not short it. */
    TIE_LOOSE(RINGING, KEEP, false),
    /** The resistor bank is above its limit. */
    LOAD_HOT(DANGER, OPEN, true),
    /** A voltage, temperature or ambient sensor cannot be believed. */
    SENSOR_FAULT(RINGING, KEEP, false),
    /** No valid frame from the board. */
    SILENT(RINGING, KEEP, false),
    /** The board's clock cannot be believed. */
    CLOCK_ODD(RINGING, KEEP, false),
    /** Draining takes more charge or time than the cell can account for. */
    OVERDUE(ADVISORY, KEEP, false),
    /** The room, not the cell, is warm. */
    AMBIENT_HIGH(RINGING, KEEP, false);

    /** How loudly a finding asks for a person. */
    public enum Urgency {
        /** For the morning report; never rings at night. */
        ADVISORY,
        /** Rings. */
        RINGING,
        /** Rings, and somebody may get hurt. */
        DANGER
    }

    /** What becomes of the load when the finding is raised. */
    public enum LoadRule {
        KEEP,
        OPEN
    }

    private final Urgency urgency;
    private final LoadRule loadRule;
    private final boolean latched;

    FindingKind(Urgency urgency, LoadRule loadRule, boolean latched) {
        this.urgency = urgency;
        this.loadRule = loadRule;
        this.latched = latched;
    }

    public Urgency urgency() {
        return urgency;
    }

    public LoadRule loadRule() {
        return loadRule;
    }

    /** Whether the passage is HELD when it is raised. */
    boolean holds() {
        return latched || loadRule == OPEN;
    }

    /** Whether it stands until a person decides, and keeps the load from closing by itself as long as it stands. */
    public boolean isLatched() {
        return latched;
    }
}
