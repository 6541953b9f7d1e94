package org.ebbwatch.judge.procedure;

import static java.util.Objects.requireNonNull;

import java.util.Optional;

/**
 * What is known of a cell and its load when it is checked in.
 *
 * @param tag the person's own name for the cell, 1 to 64 characters
 * @param chemistry its chemistry
 * @param ratedAmpereHours its rated capacity, above 0
 * @param loadOhms the resistor it is drained through, above 0; for a cell of a string the one across all of it
 * @param switched whether the board switches that resistor; otherwise a person does
 * @param inString whether it is drained in series with its neighbours
 * @param string which string; empty for a cell that is in none, or was checked in when strings had no names
 * @param loadTolerance how far the load may be off; empty where nobody said, which is {@link LoadTolerance#USUAL}
 */
public record CellCard(
        String tag,
        Chemistry chemistry,
        double ratedAmpereHours,
        double loadOhms,
        boolean switched,
        boolean inString,
        Optional<CellString> string,
        Optional<LoadTolerance> loadTolerance) {
    public CellCard {
        requireNonNull(chemistry);
        requireNonNull(loadTolerance);
        if (tag.isBlank() || tag.length() > 64) {
            throw new IllegalArgumentException("a tag has 1 to 64 characters, not \"" + tag + '"');
        }
        requirePositive(ratedAmpereHours, "rated capacity in ampere hours");
        requirePositive(loadOhms, "load in ohms");
        if (string.isPresent() && !inString) {
            throw new IllegalArgumentException(
                    "a cell of the string " + string.get().name() + " is in a string");
        }
    }

    /** A cell of whose load nobody said how far it may be off. */
    public CellCard(
            String tag,
            Chemistry chemistry,
            double ratedAmpereHours,
            double loadOhms,
            boolean switched,
            boolean inString,
            Optional<CellString> string) {
        this(tag, chemistry, ratedAmpereHours, loadOhms, switched, inString, string, Optional.empty());
    }

    /** The same, in no string with a name. */
    public CellCard(
            String tag,
            Chemistry chemistry,
            double ratedAmpereHours,
            double loadOhms,
            boolean switched,
            boolean inString) {
        this(tag, chemistry, ratedAmpereHours, loadOhms, switched, inString, Optional.empty());
    }

    private static void requirePositive(double number, String what) {
        if (!(number > 0) || Double.isInfinite(number)) {
            throw new IllegalArgumentException(what + " must be a number above 0, not " + number);
        }
    }
}
