package org.ebbwatch.sim.rack;

import org.ebbwatch.sim.cell.ThermalNode;
import org.ebbwatch.sim.scenario.AmbientSpec;

/** The room with its daily swing, the sun, the resistor bank, and the watch container with its dummy cell. */
final class Surroundings {
    private static final double SECONDS_PER_DAY = 86_400;
    private static final double WARMEST_HOUR = 15;
    private static final double CONTAINER_JOULES_PER_KELVIN = 900;
    private static final double CONTAINER_KELVIN_PER_WATT = 2;
    private static final double DUMMY_JOULES_PER_KELVIN = 42;
    private static final double DUMMY_KELVIN_PER_WATT = 24;
    private static final double BANK_JOULES_PER_KELVIN = 600;
    private static final double BANK_KELVIN_PER_WATT = 0.7;

    private final AmbientSpec spec;
    private final Approach rise = new Approach();
    private final Approach sun = new Approach();
    private final ThermalNode container;
    private final ThermalNode dummy;
    private ThermalNode bank;
    private double stepSeconds;
    private double airCelsius;

    Surroundings(AmbientSpec spec) {
        this.spec = spec;
        airCelsius = roomCelsius(0);
        container = new ThermalNode(CONTAINER_JOULES_PER_KELVIN, CONTAINER_KELVIN_PER_WATT, airCelsius);
        dummy = new ThermalNode(DUMMY_JOULES_PER_KELVIN, DUMMY_KELVIN_PER_WATT, airCelsius);
        bank = new ThermalNode(BANK_JOULES_PER_KELVIN, BANK_KELVIN_PER_WATT, airCelsius);
    }

    void setStep(double seconds) {
        stepSeconds = seconds;
        rise.setStep(seconds);
        sun.setStep(seconds);
        container.setStep(seconds);
        dummy.setStep(seconds);
        bank.setStep(seconds);
    }

    private double roomCelsius(double eventSeconds) {
        double hour = spec.startHour() + eventSeconds / 3600;
        double turn = 2 * Math.PI * ((hour - WARMEST_HOUR) * 3600 / SECONDS_PER_DAY);
        return spec.celsius() + spec.swingKelvin() / 2 * StrictMath.cos(turn);
    }

    /**
     * One step.
     *
     * @param containedWatts heat that cells in the container gave off in the step before
     * @param loadWatts heat in all resistors in the step before
     */
    void step(double eventSeconds, double containedWatts, double loadWatts) {
        airCelsius = roomCelsius(eventSeconds) + rise.step() + sun.step();
        container.step(containedWatts * stepSeconds, airCelsius);
        dummy.step(0, container.celsius());
        bank.step(loadWatts * stepSeconds, airCelsius);
    }

    void rise(double kelvin, double tauSeconds) {
        rise.towards(kelvin, tauSeconds);
    }

    void sun(double kelvin, double tauSeconds) {
        sun.towards(kelvin, tauSeconds);
    }

    /** Gives the bank so many times its usual thermal resistance. */
    void setBankFactor(double factor) {
        bank = new ThermalNode(BANK_JOULES_PER_KELVIN, BANK_KELVIN_PER_WATT * factor, bank.celsius());
        bank.setStep(stepSeconds);
    }

    /** What the air and the light make of a thing without heat of its own, degrees Celsius. */
    double airCelsius() {
        return airCelsius;
    }

    double containerCelsius() {
        return container.celsius();
    }

    double dummyCelsius() {
        return dummy.celsius();
    }

    double bankCelsius() {
        return bank.celsius();
    }

    /** A number that approaches another with a time constant. */
    private static final class Approach {
        private double end;
        private double now;
        private double tauSeconds = 1;
        private double moving;
        private double stepSeconds;

        void setStep(double seconds) {
            stepSeconds = seconds;
            moving = 1 - StrictMath.exp(-seconds / tauSeconds);
        }

        void towards(double newEnd, double newTauSeconds) {
            end = newEnd;
            tauSeconds = newTauSeconds;
            setStep(stepSeconds);
        }

        double step() {
            now += (end - now) * moving;
            return now;
        }
    }
}
