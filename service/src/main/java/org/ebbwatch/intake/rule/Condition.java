package org.ebbwatch.intake.rule;

import java.util.Optional;

/**
 * How a cell looks, smells and feels when it is taken in. The one furthest down that applies is named, the rest goes into the
 * note.
 *
 * <p>Rates: C/20 to C/5 are used for disposal, at most a tenth for puffed cells (from memory); half of that is taken here.
 */
public enum Condition {
    /** Nothing to be seen, smelled or felt. */
    INTACT(Bar.NONE, false),
    /** Nobody can say, or nobody has looked. */
    UNKNOWN(Bar.NONE, true),
    /** Puffed: gas inside. */
    SWOLLEN(Bar.NONE, true),
    /** A dent, a bent corner, a mark of a fall; the case is whole. */
    DENTED(Bar.NONE, true),
    /** Wet, or was under water. */
    WET(Bar.UNTIL_DECIDED, true),
    /** Warmer than what lies beside it, with nothing connected. */
    WARM(Bar.UNTIL_DECIDED, true),
    /** The case or pouch is open. */
    CASING_TORN(Bar.FOR_GOOD, true),
    /** It smells sweet or sharp: solvent gets out. */
    SMELL_OF_SOLVENT(Bar.FOR_GOOD, true),
    /** Liquid, residue or hissing. */
    LEAKING(Bar.FOR_GOOD, true);

    /** Fastest discharge of an intact cell, as a share of rated capacity an hour. */
    public static final double FASTEST_RATE = 1.0 / 3;

    /** Fastest discharge of a cell that may be damaged. */
    public static final double FASTEST_RATE_DAMAGED = 1.0 / 20;

    private final Bar bar;
    private final boolean damaged;

    Condition(Bar bar, boolean damaged) {
        this.bar = bar;
        this.damaged = damaged;
    }

    /** Whether a cell may go on a rack. */
    private enum Bar {
        NONE,
        UNTIL_DECIDED,
        FOR_GOOD
    }

    /** Whether it is treated as damaged. */
    public boolean isDamaged() {
        return damaged;
    }

    /** Whether such a cell may go on a rack as it is. */
    public boolean isForARack() {
        return bar == Bar.NONE;
    }

    /** Whether no later look can lift the bar. */
    public boolean isForGood() {
        return bar == Bar.FOR_GOOD;
    }

    /** Fastest discharge of such a cell, as a share of rated capacity an hour; empty where it is not discharged at all. */
    public Optional<Double> fastestRate() {
        return isForARack() ? Optional.of(damaged ? FASTEST_RATE_DAMAGED : FASTEST_RATE) : Optional.empty();
    }

    /** In words. */
    public String words() {
        return switch (this) {
            case INTACT -> "intact";
            case UNKNOWN -> "in a condition nobody knows";
            case SWOLLEN -> "swollen";
            case DENTED -> "dented";
            case WET -> "wet";
            case WARM -> "warm";
            case CASING_TORN -> "torn";
            case SMELL_OF_SOLVENT -> "smelling of solvent";
            case LEAKING -> "leaking";
        };
    }
}
