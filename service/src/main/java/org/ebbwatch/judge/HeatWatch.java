package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.estimate.HeatingTest;
import org.ebbwatch.judge.estimate.RobustSlope;
import org.ebbwatch.judge.estimate.Trail;
import org.ebbwatch.judge.estimate.WatchClock;
import org.ebbwatch.judge.procedure.Procedure.Heat;

/**
 * Raises WARMING, HOT, LOAD_HOT and AMBIENT_HIGH.
 *
 * <p>Absolute trips wait for nothing. Limits against ambient pause in an announced window. A cell that has just come off its
 * load may still carry the warmth of it: the limit against ambient is wider by that warmth, fading with the cell's own time
 * constant of about twenty minutes (measured on recordings of 18650 cells in still air: 778 s and 1200 s).
 */
final class HeatWatch {
    private static final double FADING_MILLIS = 1_200_000;
    private static final double CLEAR_KELVIN = 1;
    private static final double CLEAR_KELVIN_PER_SECOND = 0.005;
    private static final long PROJECTION_SPAN_MILLIS = 120_000;
    private static final int PROJECTION_READINGS = 10;
    private static final int BLIND_SCANS = 3;
    /** 70 mW in an 18650 cell of 42 J/K: nothing that rests or is bonded makes so much heat (computed). */
    static final double TELLING_KELVIN_PER_SECOND = 0.1 / 60;

    /** A cell that hands carried from one place to another takes so long to settle (common practice, no source). */
    private static final long SETTLING_MILLIS = 1_800_000;

    /** No cell follows the room with a shorter time constant (520 s to 1200 s in recordings, less a third). */
    private static final double QUICKEST_CELL_SECONDS = 360;

    private static final int AMBIENT_SCANS = 3;
    private static final double QUICK_LAG_MILLIS = 10_000;
    private static final double REFERENCE_LAG_MILLIS = 180_000;
    private static final double ROOM_LAG_MILLIS = 1_800_000;
    private static final int RATE_SCANS = 3;
    private static final double RATE_DEVIATIONS = 3;
    private static final double MOST_DOUBT_KELVIN = 1;
    private static final long RATE_SPAN_MILLIS = 10_000;
    private static final long RATE_SPACING_MILLIS = 500;

    private final FindingBook findings;
    private final Trail recent = new Trail(24, 5_000);
    private final Trail latest = new Trail(21, RATE_SPACING_MILLIS);
    private final HeatingTest heating = new HeatingTest();
    private final WatchClock calm = new WatchClock();

    private Heat heat;
    private double slope = Double.NaN;
    private int ambientScans;
    private double slowReference = Double.NaN;
    private double quickReference = Double.NaN;
    private double roomReference = Double.NaN;
    private double quickCelsius = Double.NaN;
    private double slowCelsius = Double.NaN;
    private double ownKelvin;
    private int blindScans;
    private double carriedKelvin;
    private long carriedSinceMillis;
    private boolean bonded;
    private long settlingMillis;

    HeatWatch(Heat heat, FindingBook findings) {
        this.heat = heat;
        this.findings = findings;
    }

    /** The load went off while the cell was {@code excessKelvin} above ambient. */
    void cooling(long millis, double excessKelvin) {
        carriedKelvin = Double.isNaN(excessKelvin) ? 0 : Math.max(0, excessKelvin);
        carriedSinceMillis = millis;
    }

    void bonded(boolean now) {
        bonded = now;
        settlingMillis = SETTLING_MILLIS;
        heating.forget();
        quickReference = Double.NaN;
        roomReference = Double.NaN;
        slowReference = Double.NaN;
        quickCelsius = Double.NaN;
        slowCelsius = Double.NaN;
    }

    void judgeBy(Heat other) {
        heat = other;
    }

    /** Nobody looked for a while; a cell that was hot may not have been near ambient. */
    void interrupted() {
        forget();
        calm.restart();
    }

    /** Temperatures before and after cannot be compared. */
    void forget() {
        recent.clear();
        latest.clear();
        heating.forget();
        slope = Double.NaN;
    }

    /**
     * Judges one scan.
     *
     * @param announced whether a person's window is open
     * @param own how much warmer its own current makes the cell
     */
    void judge(Scan scan, SensorWatch sensors, Phase phase, boolean announced, OwnWarmth own, long stepMillis) {
        ambient(sensors.ambient());
        bank(sensors.bank());
        double celsius = sensors.celsius();
        if (Double.isNaN(celsius)) {
            calm.restart();
            blind();
            return;
        }
        blindScans = 0;
        ownKelvin = own.kelvin();
        boolean tells = !announced && own.isSteady();
        evidence(scan.eventMillis(), celsius - over(sensors, phase), celsius, tells, stepMillis);
        if (recent.add(scan.eventMillis(), celsius)) {
            slope = recent.slopePerSecond(PROJECTION_SPAN_MILLIS, PROJECTION_READINGS);
        }
        latest.add(scan.eventMillis(), celsius);
        hot(sensors, phase, announced);
        warming(scan, sensors, phase, announced);
        if (sensors.excess() < heat.calmKelvin()) {
            calm.run(stepMillis);
        } else {
            calm.restart();
        }
    }

    /** Against the reference of the last minutes: its noise must not add to the cell's, nor look like a drift. */
    private void evidence(long millis, double reference, double celsius, boolean tells, long stepMillis) {
        quickReference = follow(quickReference, reference, stepMillis / QUICK_LAG_MILLIS);
        roomReference = follow(roomReference, reference, stepMillis / ROOM_LAG_MILLIS);
        slowReference = follow(slowReference, reference, stepMillis / REFERENCE_LAG_MILLIS);
        quickCelsius = follow(quickCelsius, celsius, stepMillis / QUICK_LAG_MILLIS);
        slowCelsius = follow(slowCelsius, celsius, stepMillis / REFERENCE_LAG_MILLIS);
        settlingMillis = Math.max(0, settlingMillis - stepMillis);
        if (tells && settlingMillis == 0) {
            heating.add(millis, Double.isNaN(reference) ? reference : celsius - slowReference, 0);
        } else {
            heating.forget();
        }
    }

    private static double follow(double average, double reading, double share) {
        if (Double.isNaN(reading)) {
            return average;
        }
        return Double.isNaN(average) ? reading : average + Math.min(1, share) * (reading - average);
    }

    /** A reading after a blind stretch is no rise since the one before it. */
    private void blind() {
        blindScans++;
        if (blindScans == BLIND_SCANS) {
            forget();
        }
    }

    /** Whether the cell has been near ambient long enough to be handled after HOT. */
    boolean isCalm() {
        return calm.elapsedMillis() >= heat.calmMillis();
    }

    private void hot(SensorWatch sensors, Phase phase, boolean announced) {
        double celsius = sensors.celsius();
        double trip = phase == Phase.TIE_OFF ? heat.tieOffHotCelsius() : heat.hotCelsius();
        if (celsius >= trip) {
            findings.raise(FindingKind.HOT, celsius, trip, "degC", "Hot: %1$.1f degC, trip at %2$.0f degC.");
        }
        if (announced) {
            return;
        }
        double rate = suddenRate();
        if (rate >= heat.hotKelvinPerSecond()) {
            findings.raise(
                    FindingKind.HOT,
                    rate,
                    heat.hotKelvinPerSecond(),
                    "K/s",
                    "Hot: heating %1$.2f K/s at %3$.1f degC, trip at %2$.1f K/s.",
                    celsius);
        }
        double over = overReference(sensors);
        double limit = heat.tieOffHotKelvin() + widening(sensors);
        if (phase == Phase.TIE_OFF && over >= limit) {
            findings.raise(
                    FindingKind.HOT,
                    over,
                    limit,
                    "K",
                    "Hot in tie-off: %1$.1f K over its reference, trip at %2$.1f K.");
        }
    }

    /** Kelvin per second over the last scans; 0 unless more was risen than noise adds, each step doing its part of it. */
    private double suddenRate() {
        double best = 0;
        double least = heat.hotRiseKelvin() + Math.min(MOST_DOUBT_KELVIN, RATE_DEVIATIONS * heating.deviation());
        for (int step = 2; step <= latest.size(); step++) {
            long millis = latest.millis(1) - latest.millis(step);
            double lastStep = latest.reading(step - 1) - latest.reading(step);
            double lastSeconds = (latest.millis(step - 1) - latest.millis(step)) / 1000.0;
            if (millis > RATE_SPAN_MILLIS || lastStep < heat.hotKelvinPerSecond() / 2 * lastSeconds) {
                break;
            }
            double rise = latest.reading(1) - latest.reading(step);
            if (step >= RATE_SCANS && rise >= least) {
                best = Math.max(best, rise * 1000 / millis);
            }
        }
        return best;
    }

    private void warming(Scan scan, SensorWatch sensors, Phase phase, boolean announced) {
        double celsius = sensors.celsius();
        double over = over(sensors, phase);
        double limit = relativeLimit(scan.eventMillis(), sensors, phase);
        boolean absolute = celsius >= heat.warmCelsius();
        boolean evident = !announced && isEvident();
        boolean relative = !announced && over >= limit;
        if (absolute) {
            findings.raise(
                    FindingKind.WARMING,
                    celsius,
                    heat.warmCelsius(),
                    "degC",
                    "Warming: %1$.1f degC, limit %2$.0f degC.");
        } else if (relative) {
            findings.raise(
                    FindingKind.WARMING,
                    over,
                    limit,
                    "K",
                    "Warming: %1$.1f K over its reference, limit %2$.1f K; its own current explains %3$.1f K.",
                    ownKelvin);
        } else if (evident) {
            findings.raise(
                    FindingKind.WARMING,
                    heating.perSecond(),
                    TELLING_KELVIN_PER_SECOND,
                    "K/s",
                    "Warming %3$.2f K/min for %4$.0f s with nothing to warm it (noise explains %5$.2f K): %6$.1f degC.",
                    heating.perSecond() * 60,
                    heating.rampSeconds(),
                    heating.explainedKelvin(),
                    celsius);
        } else if (!announced) {
            projected(sensors, phase);
        }
        boolean calmAgain = celsius < heat.warmCelsius() - CLEAR_KELVIN && over < limit - CLEAR_KELVIN;
        if (calmAgain && !(slope > CLEAR_KELVIN_PER_SECOND) && heating.score() < HeatingTest.BOUND / 2) {
            findings.clear(FindingKind.WARMING);
        }
    }

    /** A rise that noise does not explain, which the reading itself shows while its reference stands. */
    private boolean isEvident() {
        if (!heating.isHeating() || heating.surelyPerSecond() < TELLING_KELVIN_PER_SECOND + fromTheRoomPerSecond()) {
            return false;
        }
        double rise = heating.perSecond() * heating.rampSeconds();
        boolean stands = Math.abs(quickReference - slowReference) < rise / 3;
        return stands && quickCelsius - slowCelsius >= rise / 2;
    }

    /**
     * How fast the room may warm the cell: one that is warmer than it, and one that has moved within the half hour, which
     * reaches the cell and its reference each in its own time.
     */
    private double fromTheRoomPerSecond() {
        double warmer = Math.max(0, quickReference - quickCelsius);
        double moved = Math.abs(slowReference - roomReference);
        return Math.max(warmer, moved) / QUICKEST_CELL_SECONDS;
    }

    private void projected(SensorWatch sensors, Phase phase) {
        double trip = phase == Phase.TIE_OFF ? heat.tieOffHotCelsius() : heat.hotCelsius();
        double seconds = heat.projectionMillis() / 1000.0;
        double celsius = sensors.celsius();
        boolean followsTheRoom = sensors.excess() < CLEAR_KELVIN;
        if (followsTheRoom || !(celsius + slope * seconds >= trip)) {
            return;
        }
        RobustSlope.of(recent, PROJECTION_SPAN_MILLIS)
                .filter(sure -> celsius + sure.lowestPerSecond() * seconds >= trip)
                .ifPresent(sure -> findings.raise(
                        FindingKind.WARMING,
                        sure.perSecond(),
                        (trip - celsius) / seconds,
                        "K/s",
                        "Warming %3$.2f K/min (surely %4$.2f or more) at %5$.1f degC: hot within %6$s minutes at this rate.",
                        sure.perSecond() * 60,
                        sure.lowestPerSecond() * 60,
                        celsius,
                        inWords(heat.projectionMillis() / 60_000)));
    }

    private static String inWords(long minutes) {
        return minutes == 10 ? "ten" : Long.toString(minutes);
    }

    private double over(SensorWatch sensors, Phase phase) {
        return phase == Phase.TIE_OFF ? overReference(sensors) : sensors.excess();
    }

    private double relativeLimit(long millis, SensorWatch sensors, Phase phase) {
        return switch (phase) {
            case DRAIN -> heat.drainWarmKelvin();
            case TIE_OFF -> heat.tieOffWarmKelvin() + widening(sensors);
            default -> heat.restWarmKelvin() + carried(millis);
        };
    }

    private double carried(long millis) {
        double age = (millis - carriedSinceMillis) / FADING_MILLIS;
        return carriedKelvin == 0 ? 0 : carriedKelvin * StrictMath.exp(-age);
    }

    private double widening(SensorWatch sensors) {
        return bonded && !Double.isNaN(sensors.reference()) ? 0 : heat.withoutDummyKelvin();
    }

    private double overReference(SensorWatch sensors) {
        double reference = bonded ? sensors.reference() : Double.NaN;
        return Double.isNaN(reference) ? sensors.excess() : sensors.celsius() - reference;
    }

    /** One noisy reading makes no warm room, and none ends it. */
    private void ambient(double ambient) {
        if (ambient > heat.ambientCelsius()) {
            ambientScans = Math.min(AMBIENT_SCANS, Math.max(0, ambientScans) + 1);
        } else if (ambient < heat.ambientCelsius() - CLEAR_KELVIN) {
            ambientScans = Math.max(-AMBIENT_SCANS, Math.min(0, ambientScans) - 1);
        } else {
            ambientScans = 0;
        }
        if (ambientScans == AMBIENT_SCANS) {
            findings.raise(
                    FindingKind.AMBIENT_HIGH,
                    ambient,
                    heat.ambientCelsius(),
                    "degC",
                    "The room is at %1$.1f degC, limit %2$.0f degC.");
        } else if (ambientScans == -AMBIENT_SCANS) {
            findings.clear(FindingKind.AMBIENT_HIGH);
        }
    }

    private void bank(double celsius) {
        if (celsius >= heat.bankCelsius()) {
            findings.raise(
                    FindingKind.LOAD_HOT,
                    celsius,
                    heat.bankCelsius(),
                    "degC",
                    "The resistor bank is at %1$.0f degC, limit %2$.0f degC.");
        }
    }
}
