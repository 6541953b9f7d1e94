package org.ebbwatch.night;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * How long after its onset a rise of known slope is found, by the judge and by the ideal observer on the same readings. A cell
 * at 3.5 V and two kelvin above a room of 21 degC; after 80 minutes it begins to heat. Counts of
 * 0.02 K; the room's sensor has the same noise.
 *
 * @param kelvinPerSecond slope at the cell, or at the sensor where {@code sensorSeconds} is 0
 * @param noiseKelvin deviation of a reading
 * @param intervalMillis between scans
 * @param sensorSeconds time constant of the sensor
 * @param onLoad whether it heats on its load, or waiting for one, where limits are narrower
 */
record HeatingTrial(
        double kelvinPerSecond, double noiseKelvin, long intervalMillis, double sensorSeconds, boolean onLoad) {
    /** One false alarm in a thousand nights of 24 h. */
    private static final double FALSE_EVERY_MILLIS = 1000 * 86_400_000.0;

    private static final double COUNT_KELVIN = 0.02;
    private static final double ROOM_CELSIUS = 21;
    private static final double EXCESS_KELVIN = 2;
    private static final long ONSET_MILLIS = 4_800_000;
    private static final long LONGEST_MILLIS = 10_800_000;
    private static final double WAITS_FOR_HOT_SECONDS = 2_400;

    /** What many trials gave: seconds from the onset; {@link Double#POSITIVE_INFINITY} where it was not found. */
    record Delays(List<Double> warming, List<Double> hot, List<Double> ideal) {}

    /** One trial's delays, seconds from the onset. */
    private record Delay(double warming, double hot, double ideal) {}

    Delays run(int trials, long seed) {
        double perScan = kelvinPerSecond * intervalMillis / 1000 / noiseKelvin;
        double[] shape = PageDetector.ramp(perScan, 1000 * sensorSeconds / intervalMillis);
        double threshold = PageDetector.thresholdFor(shape, FALSE_EVERY_MILLIS / intervalMillis);
        List<Delay> all = IntStream.range(0, trials)
                .parallel()
                .mapToObj(trial ->
                        one(new Random((seed + trial) * 0x9E37_79B9_7F4A_7C15L), new PageDetector(shape), threshold))
                .toList();
        return new Delays(
                all.stream().map(Delay::warming).toList(),
                all.stream().map(Delay::hot).toList(),
                all.stream().map(Delay::ideal).toList());
    }

    private Delay one(Random noise, PageDetector ideal, double threshold) {
        var card = new CellCard("trial", Chemistry.LAYERED_OXIDE, 2, 22, true, false);
        Judge judge = new Judge(card, Procedure.careful());
        double warming = Double.POSITIVE_INFINITY;
        double hot = Double.POSITIVE_INFINITY;
        double told = Double.POSITIVE_INFINITY;
        double sensor = ROOM_CELSIUS + EXCESS_KELVIN;
        double follows = sensorSeconds == 0 ? 1 : 1 - StrictMath.exp(-intervalMillis / 1000.0 / sensorSeconds);
        double phase = noise.nextDouble() * intervalMillis;
        boolean on = false;
        for (long at = intervalMillis; at < LONGEST_MILLIS; at += intervalMillis) {
            double heatedSeconds = Math.max(0, (at - ONSET_MILLIS - phase) / 1000);
            double cell = ROOM_CELSIUS + EXCESS_KELVIN + kelvinPerSecond * heatedSeconds;
            sensor += (cell - sensor) * follows;
            double read = counted(sensor + noiseKelvin * noise.nextGaussian());
            double room = counted(ROOM_CELSIUS + noiseKelvin * noise.nextGaussian());
            Outcome outcome = judge.fold(scan(at, read, room, on));
            if (onLoad && !on && judge.allowed().contains(Act.PUT_ON) && at > 30_000) {
                judge.fold(new Entry.Acted(at, Act.PUT_ON));
                on = judge.phase() == Phase.DRAIN;
            }
            if (heatedSeconds > 0) {
                warming = raised(outcome, FindingKind.WARMING) ? Math.min(warming, heatedSeconds) : warming;
                hot = raised(outcome, FindingKind.HOT) ? Math.min(hot, heatedSeconds) : hot;
            }
            double away = (read - ROOM_CELSIUS - EXCESS_KELVIN) / noiseKelvin;
            if (told == Double.POSITIVE_INFINITY && ideal.take(away) >= threshold && heatedSeconds > 0) {
                told = heatedSeconds;
            }
            boolean noHotterSoon =
                    warming < Double.POSITIVE_INFINITY && heatedSeconds > warming + WAITS_FOR_HOT_SECONDS;
            if (told < Double.POSITIVE_INFINITY && (hot < Double.POSITIVE_INFINITY || noHotterSoon)) {
                break;
            }
        }
        return new Delay(Math.min(warming, hot), hot, told);
    }

    private static boolean raised(Outcome outcome, FindingKind kind) {
        for (Outcome.Event event : outcome.events()) {
            if (event instanceof Outcome.Raised raised && raised.finding().kind() == kind) {
                return true;
            }
        }
        return false;
    }

    private static double counted(double celsius) {
        return Math.rint(celsius / COUNT_KELVIN) * COUNT_KELVIN;
    }

    private static Entry.Scan scan(long at, double celsius, double room, boolean on) {
        double volts = on ? 3.48 : 3.5;
        return new Entry.Scan(
                at, volts, 0.002, 1e-4, Double.NaN, celsius, room, Double.NaN, Double.NaN, on, Suspicion.NONE);
    }
}
