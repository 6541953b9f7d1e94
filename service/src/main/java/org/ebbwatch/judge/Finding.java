package org.ebbwatch.judge;

import static java.util.Objects.requireNonNull;

/**
 * Something the judge saw, with the numbers it was based on.
 *
 * @param kind what was seen
 * @param eventMillis event time at which it was raised
 * @param phase the phase it was raised in
 * @param seen the measured quantity, in {@code unit}; NaN where the finding rests on no number
 * @param limit what it was held against, in {@code unit}; NaN where there is none
 * @param unit {@code V}, {@code A}, {@code degC}, {@code K}, {@code K/s}, {@code Ah}, {@code s} or empty
 * @param line the finding in one line, for a person
 */
public record Finding(
        FindingKind kind, long eventMillis, Phase phase, double seen, double limit, String unit, String line) {
    public Finding {
        requireNonNull(kind);
        requireNonNull(phase);
        requireNonNull(unit);
        requireNonNull(line);
    }
}
