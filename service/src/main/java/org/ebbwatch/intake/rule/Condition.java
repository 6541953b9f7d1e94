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

    private static final String GENTLE = "Procedure `damaged`, at most C/20, apart from the others.";
    private static final String LOCAL = " Your local rules, fire service and licensed practice come before this.";

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

    /** What it may do, a sentence or more. */
    public String danger() {
        return switch (this) {
            case INTACT -> "nothing is to be seen, and damage inside cannot be.";
            case UNKNOWN -> "damage that nobody looked for is damage all the same.";
            case SWOLLEN ->
                "there is gas inside that burns, and a puffed pouch that is pressed or pierced may catch fire.";
            case DENTED -> "a dent may have brought its electrodes close; it can short hours later.";
            case WET -> "water makes hydrogen and heat at live terminals, and may have got inside.";
            case WARM -> "with nothing connected it heats itself, by a short inside: that may run away.";
            case CASING_TORN ->
                "air and moisture get at what burns in it, and what comes out is poison: with moisture it makes hydrogen"
                        + " fluoride.";
            case SMELL_OF_SOLVENT ->
                "solvent that burns gets out, and it has begun to vent; hydrogen fluoride may come with it.";
            case LEAKING ->
                "what comes out burns and is poison; with moisture it makes hydrogen fluoride, which goes through skin and"
                        + " lungs.";
        };
    }

    /** What is usually done with it; local rules and licensed practice come before. */
    public String practice() {
        return switch (this) {
            case INTACT -> "Ordinary care.";
            case UNKNOWN -> "Look at it, smell it, feel it. " + GENTLE;
            case SWOLLEN -> "Leave it as it lies, with room to swell further. " + GENTLE;
            case DENTED -> "Leave it apart for a day before you connect it. " + GENTLE;
            case WET ->
                "Leave it outdoors, apart, on a surface that does not burn, terminals free, until it is dry; do not heat or shake"
                        + " it. Then a person looks at it again and decides." + LOCAL;
            case WARM ->
                "Keep away from it. If it can be done without danger bring it outdoors, on sand or stone, clear of everything that"
                        + " burns, and watch it from afar for a day. If it gets hotter, hisses or smells clear the place and call"
                        + " the fire service. Cold again, a person looks at it and decides." + LOCAL;
            case CASING_TORN, SMELL_OF_SOLVENT, LEAKING ->
                "Do not breathe over it; gloves and eye protection. Bring it outdoors or under a hood, singly, into a steel"
                        + " container with dry sand or vermiculite whose lid cannot build up pressure, away from people, from the"
                        + " way out and from other cells; label it and ask who takes damaged cells." + LOCAL;
        };
    }
}
