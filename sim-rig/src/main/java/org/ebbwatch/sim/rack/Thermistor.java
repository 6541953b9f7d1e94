package org.ebbwatch.sim.rack;

import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.sim.scenario.ConverterSpec;

/** One temperature sensor on its channel: it lags, errs by a fixed offset, is noisy, can be held between two fingers. */
final class Thermistor {
    /** In air; a leaded thermistor's data sheet says 12 s. */
    static final double TAU_SECONDS = 12;

    private static final double FINGER_CELSIUS = 33;
    private static final double FINGER_SHARE = 0.6;
    private static final double CONTACT_SHARE = 0.97;
    private static final double LOWEST_CELSIUS = -55;
    private static final double HIGHEST_CELSIUS = 200;
    private static final double COUNTS_PER_KELVIN = 1e6 / ConverterSpec.MICROKELVIN_PER_COUNT;

    private final double offsetKelvin;
    private final double noiseCounts;
    private double tauSeconds = TAU_SECONDS;
    private double stepSeconds = 1;
    private double staying;
    private double celsius;
    private double heldSeconds;
    private int counts;
    private int state;

    Thermistor(ConverterSpec spec, Randomness errors, double celsius) {
        offsetKelvin = errors.nextNormal() * spec.celsiusKelvin() / 2;
        noiseCounts = spec.celsiusNoiseCounts();
        this.celsius = celsius;
        setStep(stepSeconds);
    }

    void setStep(double seconds) {
        stepSeconds = seconds;
        staying = StrictMath.exp(-seconds / tauSeconds);
    }

    void setTau(double seconds) {
        tauSeconds = seconds;
        setStep(stepSeconds);
    }

    /** Someone holds the place where it sits on the cell. */
    void hold(double seconds) {
        heldSeconds = seconds;
    }

    void step(double cellCelsius, double airCelsius, boolean off) {
        double end = off ? airCelsius : airCelsius + CONTACT_SHARE * (cellCelsius - airCelsius);
        if (heldSeconds > 0) {
            heldSeconds -= stepSeconds;
            if (!off) {
                end += FINGER_SHARE * (FINGER_CELSIUS - end);
            }
        }
        celsius = end + (celsius - end) * staying;
    }

    void read(Effects effects, Randomness noise) {
        double drawn = noise.nextNormal() * noiseCounts;
        if (effects.celsiusFrozen) {
            return;
        }
        state = Reading.CELSIUS_VALID;
        if (!Double.isNaN(effects.absurdCelsius)) {
            counts = (int) (effects.absurdCelsius * COUNTS_PER_KELVIN);
        } else if (effects.sensorOpen) {
            counts = effects.sensorOpenFlagged ? 0 : (int) (LOWEST_CELSIUS * COUNTS_PER_KELVIN);
            state = effects.sensorOpenFlagged ? Reading.SENSOR_OPEN : Reading.CELSIUS_VALID | Reading.CELSIUS_AT_RAIL;
        } else {
            double seen = celsius + offsetKelvin;
            if (seen < LOWEST_CELSIUS || seen > HIGHEST_CELSIUS) {
                seen = seen < LOWEST_CELSIUS ? LOWEST_CELSIUS : HIGHEST_CELSIUS;
                drawn = 0;
                state |= Reading.CELSIUS_AT_RAIL;
            }
            counts = (int) Math.rint(seen * COUNTS_PER_KELVIN + drawn);
        }
    }

    /** Whether the last reading is valid and above so many degrees. */
    boolean readsAbove(double limitCelsius) {
        return (state & Reading.CELSIUS_VALID) != 0 && counts > limitCelsius * COUNTS_PER_KELVIN;
    }

    /** What it would read without offset, noise and faults, degrees Celsius. */
    double celsius() {
        return celsius;
    }

    int counts() {
        return counts;
    }

    /** Bits of {@link Reading#state} that the temperature decides. */
    int state() {
        return state;
    }
}
