package org.ebbwatch.judge.procedure;

import static java.util.Objects.requireNonNull;

/**
 * What is known of a cell and its load when it is checked in.
 *
 * @param tag the person's own name for the cell, 1 to 64 characters
 * @param chemistry its chemistry
 * @param ratedAmpereHours its rated capacity, above 0
 * @param loadOhms the resistor it is drained through, above 0
 * @param switched whether the board switches that resistor; otherwise a person does
 * @param inString whether it is drained in series with its neighbours
 */
public record CellCard(
        String tag, Chemistry chemistry, double ratedAmpereHours, double loadOhms, boolean switched, boolean inString) {
    public CellCard {
        requireNonNull(chemistry);
        if (tag.isBlank() || tag.length() > 64) {
            throw new IllegalArgumentException("a tag has 1 to 64 characters, not \"" + tag + '"');
        }
        requirePositive(ratedAmpereHours, "rated capacity in ampere hours");
        requirePositive(loadOhms, "load in ohms");
    }

    private static void requirePositive(double number, String what) {
        if (!(number > 0) || Double.isInfinite(number)) {
            throw new IllegalArgumentException(what + " must be a number above 0, not " + number);
        }
    }
}
