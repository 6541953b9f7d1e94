package org.ebbwatch.intake.rule;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.procedure.Chemistry;

/**
 * What a person calls a lithium cell by, and the voltages such a cell can show.
 *
 * <p>Highest voltages: 4.20 V for layered oxide and spinel and 3.65 V for iron phosphate are the usual ends of charge; pouch
 * cells with cobalt are sold for up to 4.45 V (from memory). Each with 0.05 V for the meter and the charger.
 */
public enum CellChemistry {
    /** Nickel, manganese and cobalt. */
    NMC(4.25, 3.7),
    /** Nickel, cobalt and aluminium. */
    NCA(4.25, 3.6),
    /** Cobalt, as in most pouch cells of phones. */
    LCO(4.50, 3.7),
    /** Manganese spinel. */
    LMO(4.25, 3.8),
    /** Iron phosphate. */
    LFP(3.70, 3.2),
    /** Nobody knows. Taken for layered oxide, which holds the most behind a voltage. */
    UNKNOWN(4.50, 3.7);

    private final double highestVolts;
    private final double nominalVolts;

    CellChemistry(double highestVolts, double nominalVolts) {
        this.highestVolts = highestVolts;
        this.nominalVolts = nominalVolts;
    }

    /** No sound cell of it shows more at rest. */
    public double highestVolts() {
        return highestVolts;
    }

    /** What is printed on it. */
    public double nominalVolts() {
        return nominalVolts;
    }

    /** What the judge takes it for. */
    public Chemistry judged() {
        return this == LFP ? Chemistry.LFP : Chemistry.LAYERED_OXIDE;
    }

    /** As it is written. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one that is written so; empty where none is. */
    public static Optional<CellChemistry> ofKey(String key) {
        return Arrays.stream(values()).filter(each -> each.key().equals(key)).findFirst();
    }
}
