package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.Procedure.Plausible;

/**
 * Decides which of a scan's quantities may be believed. What may not is NaN from here on, so that it reaches no average
 * and no limit. Three bad scans in a row are a fault; it takes a minute of good ones to be rid of it.
 */
final class SensorWatch {
    private static final double ABSURD_AMPERES = 1e4;
    private static final double ABSURD_BANK_CELSIUS = 1_000;
    private static final int BAD_IN_A_ROW = 3;
    private static final long GOOD_AGAIN_MILLIS = 60_000;

    private final Thermometer cell = new Thermometer("temperature");
    private final Thermometer room = new Thermometer("ambient temperature");
    private final Thermometer dummy = new Thermometer("reference temperature");
    private final FrozenWatch frozen = new FrozenWatch();
    private final FallWatch fall = new FallWatch();

    private Plausible plausible;
    private double volts = Double.NaN;
    private double amperes = Double.NaN;
    private double celsius = Double.NaN;
    private double ambient = Double.NaN;
    private double reference = Double.NaN;
    private double bank = Double.NaN;

    private String complaint = "";
    private double complaintReading = Double.NaN;
    private int badInARow;
    private boolean faulty;
    private long goodSinceMillis = -1;

    SensorWatch(Plausible plausible) {
        this.plausible = plausible;
    }

    void judgeBy(Plausible other) {
        plausible = other;
    }

    /**
     * Looks at one scan; the accessors then give what may be believed of it.
     *
     * @param voltsNeeded false where a voltage says nothing, so that none need be read
     * @param announced whether a person is at work on the channel
     */
    void look(Scan scan, boolean voltsNeeded, boolean announced) {
        complaint = "";
        complaintReading = Double.NaN;
        volts = believeVolts(scan, voltsNeeded);
        amperes = believeAmperes(scan.amperes());
        celsius = believe(cell, scan.celsius(), scan.suspect());
        ambient = believe(room, scan.ambientCelsius(), Suspicion.NONE);
        reference = Double.isNaN(scan.referenceCelsius())
                ? Double.NaN
                : believe(dummy, scan.referenceCelsius(), Suspicion.NONE);
        bank = believeBank(scan.bankCelsius());
        if (frozen.isFrozen(scan)) {
            celsius = complain("temperature frozen", scan.celsius());
        }
        if (announced) {
            fall.forget();
        } else if (fall.hasLeftItsCell(scan.eventMillis(), celsius, ambient, plausible.cellCoolingMillis())) {
            celsius = complain(fall.complaint(), scan.celsius());
        }
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

    /** The dummy cell in the watch container; NaN where there is none. */
    double reference() {
        return reference;
    }

    /** The resistor bank; NaN where there is no sensor. */
    double bank() {
        return bank;
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

    /** The channel, the load or the person changed the heat balance; past falls no longer tell. */
    void forgetFalls() {
        fall.forget();
    }

    /** A person dealt with the sensor. */
    void trustAgain() {
        fall.trustAgain();
        frozen.workedOn();
    }

    private double believeVolts(Scan scan, boolean needed) {
        double read = scan.volts();
        if (Double.isNaN(read)) {
            return needed ? complain("voltage not read", read) : read;
        }
        if (scan.suspect() == Suspicion.VOLTS_AT_RAIL && read > 1) {
            return complain("voltage at the end of the converter's range", read);
        }
        if (read < plausible.lowestVolts() || read > plausible.highestVolts()) {
            return complain("absurd voltage", read);
        }
        return read;
    }

    private double believeAmperes(double read) {
        if (Math.abs(read) > ABSURD_AMPERES) {
            badInARow = BAD_IN_A_ROW;
            return complain("absurd current", read);
        }
        return read;
    }

    private double believeBank(double read) {
        if (read > ABSURD_BANK_CELSIUS || read < plausible.lowestCelsius()) {
            return complain("absurd temperature of the resistor bank", read);
        }
        return read;
    }

    private double believe(Thermometer sensor, double read, Suspicion suspect) {
        String against = sensor.complaint(read, suspect, plausible);
        return against.isEmpty() ? read : complain(against, read);
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

    private double complain(String what, double reading) {
        if (complaint.isEmpty()) {
            complaint = what;
            complaintReading = reading;
        }
        return Double.NaN;
    }
}
