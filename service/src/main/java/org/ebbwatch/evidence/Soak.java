package org.ebbwatch.evidence;

import org.ebbwatch.judge.Entry;

/**
 * How warm a cell became while it was watched with its leads bonded, the last time it was. NaN: not read.
 *
 * @param fromEventMillis when that began
 * @param toEventMillis when it ended, or the last reading of it
 * @param highestCelsius the cell's own sensor
 * @param highestAboveReferenceKelvin over the dummy cell in the same scan
 * @param highestAboveAmbientKelvin over the rack's ambient in the same scan
 */
record Soak(
        long fromEventMillis,
        long toEventMillis,
        double highestCelsius,
        double highestAboveReferenceKelvin,
        double highestAboveAmbientKelvin) {

    static Soak begins(long eventMillis) {
        return new Soak(eventMillis, eventMillis, Double.NaN, Double.NaN, Double.NaN);
    }

    /** With what another reading adds; what the board itself suspects adds nothing. */
    Soak with(Entry.Scan scan) {
        if (scan.suspect() != Entry.Suspicion.NONE) {
            return this;
        }
        return new Soak(
                fromEventMillis,
                scan.eventMillis(),
                higher(highestCelsius, scan.celsius()),
                higher(highestAboveReferenceKelvin, scan.celsius() - scan.referenceCelsius()),
                higher(highestAboveAmbientKelvin, scan.celsius() - scan.ambientCelsius()));
    }

    private static double higher(double one, double other) {
        return Double.isNaN(one) || other > one ? other : one;
    }
}
