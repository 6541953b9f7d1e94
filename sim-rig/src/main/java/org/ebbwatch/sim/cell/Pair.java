package org.ebbwatch.sim.cell;

/** A resistor with a capacitor across it, in series with the cell. Its resistance grows while its time constant stays. */
final class Pair {
    private final double ohms;
    private final double seconds;
    private double staying;
    private double volts;

    Pair(double ohms, double seconds) {
        this.ohms = ohms;
        this.seconds = seconds;
    }

    void setStep(double stepSeconds) {
        staying = StrictMath.exp(-stepSeconds / seconds);
    }

    /** Lets it decay for a step; gives the volts left. */
    double relax() {
        volts *= staying;
        return volts;
    }

    /** Volts it gains in a step per ampere, before growth. */
    double stepOhms() {
        return ohms * (1 - staying);
    }

    /** Adds what the step's current charges. */
    void charge(double amperes, double growth) {
        volts += amperes * stepOhms() * growth;
    }

    /** Capacitance before growth, 0 for a pair without resistance. */
    double farads() {
        return ohms == 0 ? 0 : seconds / ohms;
    }

    double square() {
        return volts * volts;
    }

    Pair copy() {
        Pair copy = new Pair(ohms, seconds);
        copy.staying = staying;
        copy.volts = volts;
        return copy;
    }
}
