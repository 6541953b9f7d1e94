package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.estimate.Trail;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * Decides which of a scan's quantities may be believed. What may not is NaN from here on, so that it reaches no average
 * and no limit.
 *
 * <p>85.0 and -127 degC are what common one-wire sensors say when a conversion was missed or the sensor is gone (source:
 * data sheet of a one-wire digital thermometer; the second is a driver's constant, common practice).
 */
final class SensorWatch {
    private static final double ABSURD_AMPERES = 1e4;
    private static final int BAD_IN_A_ROW = 3;
    private static final long GOOD_AGAIN_MILLIS = 60_000;
    private static final long FALL_SPAN_MILLIS = 60_000;
    private static final double LEAST_FALL_KELVIN = 3;
    private static final double SUDDEN_KELVIN = 5;
    private static final double FROZEN_MILLIS = 600_000;
    private static final int FROZEN_NEIGHBOUR_STEPS = 60;
    private static final int LIVELY = 200;

    private final Procedure.Plausible plausible;
    private final Trail excess = new Trail(32, 2_000);

    private double volts = Double.NaN;
    private double amperes = Double.NaN;
    private double celsius = Double.NaN;
    private double ambient = Double.NaN;

    private String complaint = "";
    private double complaintReading = Double.NaN;
    private int badInARow;
    private boolean faulty;
    private boolean fellOff;
    private long goodSinceMillis = -1;

    private double lastRawCelsius = Double.NaN;
    private double lastRawAmbient = Double.NaN;
    private long sameSinceMillis;
    private int neighbourSteps;
    private int changes;

    SensorWatch(Procedure.Plausible plausible) {
        this.plausible = plausible;
    }

    /** Looks at one scan; the accessors then give what may be believed of it. */
    void look(Scan scan) {
        complaint = "";
        complaintReading = Double.NaN;
        volts = believeVolts(scan);
        amperes = believeAmperes(scan);
        celsius = believeCelsius(scan.celsius(), "temperature", scan.suspect());
        ambient = believeCelsius(scan.ambientCelsius(), "ambient temperature", Suspicion.NONE);
        watchFrozen(scan);
        watchFall(scan);
        count(scan.eventMillis());
    }

    double volts() {
        return volts;
    }

    double amperes() {
        return amperes;
    }

    double celsius() {
        return celsius;
    }

    double ambient() {
        return ambient;
    }

    /** Kelvin above ambient, NaN if either is not believed. */
    double excess() {
        return celsius - ambient;
    }

    boolean isFaulty() {
        return faulty;
    }

    /** What is wrong, in a few words. */
    String complaint() {
        return complaint;
    }

    double complaintReading() {
        return complaintReading;
    }

    private double believeVolts(Scan scan) {
        double read = scan.volts();
        if (Double.isNaN(read)) {
            return complain("voltage not read", read);
        }
        if (scan.suspect() == Suspicion.VOLTS_AT_RAIL && read > 1) {
            return complain("voltage at the end of the converter's range", read);
        }
        if (read < plausible.lowestVolts() || read > plausible.highestVolts()) {
            return complain("absurd voltage", read);
        }
        return read;
    }

    private double believeAmperes(Scan scan) {
        double read = scan.amperes();
        if (Math.abs(read) > ABSURD_AMPERES) {
            badInARow = BAD_IN_A_ROW;
            return complain("absurd current", read);
        }
        return read;
    }

    private double believeCelsius(double read, String what, Suspicion suspect) {
        if (suspect == Suspicion.SENSOR_OPEN) {
            return complain(what + " sensor open", read);
        }
        if (suspect == Suspicion.CELSIUS_AT_RAIL) {
            return complain(what + " at the end of its range", read);
        }
        if (Double.isNaN(read)) {
            return complain(what + " not read", read);
        }
        if (read < plausible.lowestCelsius() || read > plausible.highestCelsius()) {
            return complain("absurd " + what, read);
        }
        if (read == 85.0 && !(Math.abs(read - lastRawCelsius) < SUDDEN_KELVIN)) {
            return complain(what + " reads a missed conversion", read);
        }
        return read;
    }

    private void watchFrozen(Scan scan) {
        if (scan.ambientCelsius() != lastRawAmbient) {
            neighbourSteps++;
        }
        if (scan.celsius() != lastRawCelsius) {
            sameSinceMillis = scan.eventMillis();
            neighbourSteps = 0;
            changes = Math.min(changes + 1, LIVELY);
        } else if (changes >= LIVELY
                && neighbourSteps >= FROZEN_NEIGHBOUR_STEPS
                && scan.eventMillis() - sameSinceMillis >= FROZEN_MILLIS) {
            celsius = complain("temperature frozen", scan.celsius());
        }
        lastRawCelsius = scan.celsius();
        lastRawAmbient = scan.ambientCelsius();
    }

    /** A cell cools with its own time constant; three times as fast is a sensor that has left it. */
    private void watchFall(Scan scan) {
        double now = excess();
        if (Double.isNaN(now)) {
            return;
        }
        if (fellOff) {
            celsius = complain("temperature fell toward ambient faster than the cell can cool", scan.celsius());
            return;
        }
        excess.add(scan.eventMillis(), now);
        for (int step = 2; step <= excess.size(); step++) {
            long age = scan.eventMillis() - excess.millis(step);
            if (age > FALL_SPAN_MILLIS) {
                return;
            }
            double before = excess.reading(step);
            double left = before * StrictMath.exp(-3.0 * age / plausible.cellCoolingMillis());
            if (before - now >= LEAST_FALL_KELVIN && now < left - LEAST_FALL_KELVIN / 2) {
                fellOff = true;
                celsius = complain("temperature fell toward ambient faster than the cell can cool", scan.celsius());
                return;
            }
        }
    }

    private void count(long millis) {
        if (!complaint.isEmpty()) {
            goodSinceMillis = -1;
            badInARow++;
            faulty |= badInARow >= BAD_IN_A_ROW;
            return;
        }
        badInARow = 0;
        if (goodSinceMillis < 0) {
            goodSinceMillis = millis;
        }
        if (faulty && millis - goodSinceMillis >= GOOD_AGAIN_MILLIS) {
            faulty = false;
        }
    }

    /** The channel, the load or the person changed the heat balance; past falls no longer tell. */
    void forgetFalls() {
        excess.clear();
    }

    /** A person dealt with the sensor. */
    void trustAgain() {
        fellOff = false;
        excess.clear();
        changes = 0;
    }

    private double complain(String what, double reading) {
        if (complaint.isEmpty()) {
            complaint = what;
            complaintReading = reading;
        }
        return Double.NaN;
    }
}
