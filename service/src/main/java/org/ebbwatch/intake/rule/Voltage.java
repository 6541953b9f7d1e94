package org.ebbwatch.intake.rule;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Whether a measured voltage fits what a cell is said to be. */
public enum Voltage {
    /** It fits. */
    FITS,
    /** A cell that shows next to nothing: dead on arrival, or something is open. */
    SHOWS_NOTHING,
    /** Lower than a cell is left at, or one of a string has nothing: somebody has to say why it is right. */
    LOW,
    /** Higher than such a cell is ever charged: somebody has to say why it is right. */
    HIGH,
    /** Below nought: the leads of the meter are swapped, or the cell is reversed. */
    REVERSED,
    /** No lithium cell has that. */
    IMPOSSIBLE;

    /** Below this a single cell counts as dead on arrival; the judge calls such a cell not proven. */
    public static final double SHOWS_NOTHING_VOLTS = 1.0;

    /** Below this a cell was left in a device for years, or the number in series is wrong (common practice, no source). */
    public static final double LOW_VOLTS = 2.0;

    /** No lithium cell shows more. */
    public static final double MOST_VOLTS = 5.0;

    private static final double REVERSED_VOLTS = -0.05;

    /** What to make of volts across so many cells in series. */
    public static Voltage of(CellChemistry chemistry, int cellsInSeries, double volts) {
        double each = volts / cellsInSeries;
        if (each < REVERSED_VOLTS) {
            return REVERSED;
        }
        if (each > MOST_VOLTS) {
            return IMPOSSIBLE;
        }
        if (each > chemistry.highestVolts()) {
            return HIGH;
        }
        if (each < SHOWS_NOTHING_VOLTS && cellsInSeries == 1) {
            return SHOWS_NOTHING;
        }
        return each < LOW_VOLTS ? LOW : FITS;
    }

    /** Whether it is taken down as it is, where somebody says why. */
    public boolean wantsAReason() {
        return this == LOW || this == HIGH;
    }

    /** Whether it is never taken down. */
    public boolean isRefused() {
        return this == REVERSED || this == IMPOSSIBLE;
    }

    /** What is the matter with those volts, a sentence or two. */
    public String why(CellChemistry chemistry, int cellsInSeries, double volts) {
        String each = plain(volts / cellsInSeries) + " V a cell (" + plain(volts) + " V across " + cellsInSeries + ")";
        return switch (this) {
            case FITS -> each + " fits.";
            case SHOWS_NOTHING -> each + " is next to nothing.";
            case LOW ->
                each + " is less than a cell is left at: the number in series may be wrong, or a cell of it is empty.";
            case HIGH ->
                each + " is more than a sound " + chemistry.key() + " cell may show, " + plain(chemistry.highestVolts())
                        + " V: the chemistry or the number in series may be wrong, or it was overcharged.";
            case REVERSED -> each + " is below nought: the meter's leads are swapped, or the cell is reversed.";
            case IMPOSSIBLE -> each + " is more than any lithium cell has: the number in series is wrong.";
        };
    }

    private static String plain(double number) {
        return new BigDecimal(number)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
