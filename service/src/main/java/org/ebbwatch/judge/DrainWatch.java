package org.ebbwatch.judge;

import java.util.Optional;
import org.ebbwatch.judge.estimate.ChargeMeter;
import org.ebbwatch.judge.estimate.RobustSlope;
import org.ebbwatch.judge.estimate.TimeToLimit;
import org.ebbwatch.judge.estimate.Trail;

/**
 * Compares a cell on its load with what the charge taken out explains: CUT_OFF, STALLED, OVERDUE.
 *
 * <p>A healthy cell gives at least 0.09 % of its rated charge between 1.2 V and 0.3 V (computed from the published
 * open-circuit potentials of a layered-oxide cell); a collapse with less than a third of that is a switch that opened. A
 * fall that begins with the load going on is sag: the comparison is armed only once the load has been on for a while.
 *
 * <p>Of the charge, only what has left for sure counts against a cell: less its expanded uncertainty. Hours count only above
 * the drain limit; a hold is no delay.
 */
final class DrainWatch {
    private static final double COLLAPSE_FROM_VOLTS = 1.2;
    private static final double COLLAPSE_TO_VOLTS = 0.3;
    private static final double COLLAPSE_CHARGE = 0.0003;
    private static final long SAG_MILLIS = 300_000;
    private static final double SAG_CHARGE = 0.0005;
    private static final double STALL_CHARGE = 0.05;
    private static final double STALL_FACTOR = 3;
    private static final double OVERDUE_CHARGE = 1.3;
    private static final double OVERDUE_FACTOR = 2;
    private static final double TAIL_HOURS = 24;
    private static final double MEAN_VOLTS = 3.6;
    private static final long FALL_MILLIS = 900_000;
    private static final double LEAST_HEALTH = 1.0 / 3;
    private static final double LIKELY_HEALTH = 0.8;

    private final LoadedCell cell;
    private final FindingBook findings;
    private final ChargeMeter charge;

    private final Trail fall = new Trail(12, 75_000);

    private double chargeAtSwitch;
    private double chargeAbove = Double.NaN;
    private double stallCharge = Double.NaN;
    private double stallVolts = Double.NaN;
    private long onLoadMillis;
    private double decidedCharge;

    DrainWatch(LoadedCell cell, FindingBook findings, ChargeMeter charge) {
        this.cell = cell;
        this.findings = findings;
        this.charge = charge;
    }

    /** The load was switched, or the readings were interrupted: nothing before explains what comes. */
    void begin() {
        chargeAtSwitch = charge.ampereHours();
        chargeAbove = Double.NaN;
        stallCharge = Double.NaN;
        fall.clear();
    }

    /**
     * When the voltage will be at the drain limit: past the knee by its slope, before it by the charge an old cell has left,
     * a third of its rating at least and four fifths most likely (common practice, no source). Empty where nothing is known.
     */
    Optional<TimeToLimit> limitIn(double drainLimitVolts) {
        if (fall.size() == 0) {
            return Optional.empty();
        }
        double volts = fall.reading(1);
        if (volts < cell.chemistry().kneeVolts()) {
            return RobustSlope.of(fall, FALL_MILLIS).map(slope -> TimeToLimit.bySlope(volts, drainLimitVolts, slope));
        }
        return Optional.of(TimeToLimit.byCharge(
                charge.ampereHours(),
                charge.expandedAmpereHours(),
                cell.ratedAmpereHours(),
                LEAST_HEALTH,
                LIKELY_HEALTH,
                cell.amperesAt(volts)));
    }

    /** A person decided that it drains again: what was overdue is so no more, and its clock starts again. */
    void decided() {
        onLoadMillis = 0;
        decidedCharge = charge.ampereHours();
        findings.clear(FindingKind.OVERDUE);
    }

    /** Judges one believable voltage with the load on. */
    void judge(Reading now, Phase phase, long loadOnMillis, double drainLimitVolts) {
        onLoadMillis += now.volts() > drainLimitVolts ? now.stepMillis() : 0;
        fall.add(now.atMillis(), now.volts());
        collapsed(now.volts(), loadOnMillis);
        if (phase == Phase.DRAIN) {
            stalled(now.volts(), STALL_FACTOR * now.expandedVolts(), drainLimitVolts);
            overdue(now.volts(), drainLimitVolts);
        }
    }

    private void collapsed(double volts, long loadOnMillis) {
        double rated = cell.ratedAmpereHours();
        boolean armed = loadOnMillis >= SAG_MILLIS || charge.ampereHours() - chargeAtSwitch >= SAG_CHARGE * rated;
        if (volts > COLLAPSE_FROM_VOLTS) {
            chargeAbove = armed ? charge.ampereHours() : Double.NaN;
            return;
        }
        if (volts >= COLLAPSE_TO_VOLTS || Double.isNaN(chargeAbove)) {
            return;
        }
        double share = (charge.ampereHours() - chargeAbove) / rated;
        chargeAbove = Double.NaN;
        if (share < COLLAPSE_CHARGE) {
            cutOff(volts, share);
        }
    }

    void cutOff(double volts, double share) {
        findings.raise(
                FindingKind.CUT_OFF,
                volts,
                COLLAPSE_TO_VOLTS,
                "V",
                "Collapsed to %1$.3f V with %3$.4f %% of its charge: a switch opened, not empty.",
                100 * share);
    }

    private void stalled(double volts, double leastFall, double drainLimitVolts) {
        boolean mustFall = volts < cell.chemistry().kneeVolts() || charge.ampereHours() > cell.ratedAmpereHours();
        if (!mustFall || volts <= drainLimitVolts) {
            stallCharge = Double.NaN;
            if (volts <= drainLimitVolts) {
                findings.clear(FindingKind.STALLED);
            }
            return;
        }
        if (Double.isNaN(stallCharge)) {
            stallCharge = charge.ampereHours();
            stallVolts = volts;
            return;
        }
        double due = STALL_CHARGE * cell.ratedAmpereHours();
        double left = charge.ampereHours() - stallCharge;
        double doubt = left * charge.expandedShare();
        if (left - doubt < due) {
            return;
        }
        double fallen = stallVolts - volts;
        if (fallen < leastFall) {
            findings.raise(
                    FindingKind.STALLED,
                    fallen,
                    leastFall,
                    "V",
                    "Stalled at %3$.3f V: %4$.3f +/- %5$.3f Ah should have left but it fell only %1$.4f V, less than %2$.4f V.",
                    volts,
                    left,
                    doubt);
        } else {
            findings.clear(FindingKind.STALLED);
        }
        stallCharge = charge.ampereHours();
        stallVolts = volts;
    }

    private void overdue(double volts, double drainLimitVolts) {
        double most = OVERDUE_CHARGE * cell.ratedAmpereHours();
        double taken = charge.ampereHours() - decidedCharge;
        double doubt = taken * charge.expandedShare();
        if (taken - doubt > most) {
            findings.raise(
                    FindingKind.OVERDUE,
                    taken,
                    most,
                    "Ah",
                    "Overdue: %1$.3f +/- %3$.3f Ah taken out, more than %2$.3f Ah the cell can hold.",
                    doubt);
        }
        double hours = onLoadMillis / 3.6e6;
        double forecast = cell.hoursAt(MEAN_VOLTS) + TAIL_HOURS;
        if (volts > drainLimitVolts && hours > OVERDUE_FACTOR * forecast) {
            findings.raise(
                    FindingKind.OVERDUE,
                    hours * 3600,
                    OVERDUE_FACTOR * forecast * 3600,
                    "s",
                    "Overdue: %3$.0f h above the drain limit, forecast was %4$.0f h.",
                    hours,
                    forecast);
        }
    }
}
