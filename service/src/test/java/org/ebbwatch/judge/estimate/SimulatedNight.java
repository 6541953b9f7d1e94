package org.ebbwatch.judge.estimate;

import java.util.Random;
import org.ebbwatch.sim.cell.Cell;
import org.ebbwatch.sim.cell.CellCircuit;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.Relaxation;
import org.ebbwatch.sim.cell.SlowShare;

/**
 * A day of rest of a simulated cell drawn at random: NMC or LFP, 1.5 to 4 Ah, half to twice the usual resistance, relaxing by
 * exponentials (10 to 60 s, 500 to 3000 s) or by radial diffusion (2000 to 20000 s), six in ten with 0.3 to 5 % of their
 * material in poor contact (1.5 to 24 h); drained at C/5 to C/10 and held below 0.1 V for 12 h (half of them), for less
 * (a fifth), or taken off before. The channel adds noise of 0.1 to 1 mV and rounds to 0.1 or 1 mV.
 */
final class SimulatedNight {
    static final int DAY_SECONDS = 86_400;
    private static final int FINE_SECONDS = 600;
    private static final int STEP_SECONDS = 10;

    private final Random random;
    private final double resolution;
    private final boolean diffuses;
    private final double deviation;
    private final Cell cell;
    private final CellCircuit circuit = new CellCircuit();
    private final double[] volts = new double[FINE_SECONDS + (DAY_SECONDS - FINE_SECONDS) / STEP_SECONDS];

    SimulatedNight(long seed) {
        random = new Random(seed * 7919 + 13);
        diffuses = random.nextBoolean();
        Chemistry chemistry = random.nextBoolean() ? Chemistry.NMC : Chemistry.LFP;
        double ampereHours = between(1.5, 4);
        double ohms = 0.15 / ampereHours * between(0.5, 2);
        double fast = between(10, 60);
        CellSpec.Builder spec = CellSpec.build("a", chemistry, ampereHours)
                .ohms(ohms)
                .relaxation(
                        diffuses
                                ? new Relaxation.Diffusion(1.5 * ohms, fast, between(2_000, 20_000))
                                : new Relaxation.Exponentials(ohms, fast, 2 * ohms, between(500, 3_000)));
        if (random.nextDouble() < 0.6) {
            spec.slowShare(new SlowShare(between(0.003, 0.05), between(1.5, 24)));
        }
        cell = new Cell(spec.done(), 1, 1, 21);
        double load = chemistry.openCircuitVolts(0.5) * (5 + 5 * random.nextDouble()) / ampereHours;
        double kind = random.nextDouble();
        double downTo = kind < 0.7 ? 0.1 : 0.1 + 3.1 * random.nextDouble();
        double holdHours = kind < 0.5 ? 12 : kind < 0.7 ? 12 * random.nextDouble() : 0;
        drain(load, downTo, holdHours * 3600);
        rest();
        deviation = between(0.0001, 0.001);
        resolution = random.nextBoolean() ? 0.001 : 0.0001;
    }

    private double between(double low, double high) {
        return low * Math.exp(random.nextDouble() * Math.log(high / low));
    }

    private void drain(double ohms, double downTo, double holdSeconds) {
        cell.setStep(STEP_SECONDS);
        double below = -1;
        for (double second = 0; below < 0 || second - below < holdSeconds; second += STEP_SECONDS) {
            step(ohms);
            below = cell.volts() >= downTo ? -1 : below < 0 ? second : below;
        }
    }

    private void rest() {
        cell.setStep(1);
        for (int reading = 0; reading < volts.length; reading++) {
            if (reading == FINE_SECONDS) {
                cell.setStep(STEP_SECONDS);
            }
            step(Double.POSITIVE_INFINITY);
            volts[reading] = cell.volts();
        }
    }

    private void step(double ohms) {
        cell.begin();
        circuit.clear();
        if (ohms < Double.POSITIVE_INFINITY) {
            circuit.addOhms(ohms);
        }
        circuit.settle(cell, 0);
        cell.finish(circuit.amperes());
        cell.warm(0, 21);
    }

    boolean diffuses() {
        return diffuses;
    }

    /** What the terminals truly show after a day. */
    double endVolts() {
        return volts[volts.length - 1];
    }

    /** The forecast of the end from so many seconds of rest, as the channel reads them. */
    RestFit forecastAfter(int seconds) {
        var noise = new Random(seconds);
        var curve = new RestCurve();
        curve.begin(0);
        for (int reading = 0; reading < volts.length; reading++) {
            int at = reading < FINE_SECONDS ? reading + 1 : FINE_SECONDS + STEP_SECONDS * (reading - FINE_SECONDS + 1);
            if (at > seconds) {
                break;
            }
            double read = volts[reading] + deviation * noise.nextGaussian();
            curve.add(at * 1_000L, Math.rint(read / resolution) * resolution);
        }
        return RestFit.of(curve, DAY_SECONDS, Math.hypot(deviation, resolution / Math.sqrt(12)))
                .orElseThrow();
    }
}
