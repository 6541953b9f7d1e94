package org.ebbwatch.night;

import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure.Heat;

/**
 * When a finding is due by the truth, whatever was read, and how long the judge may take. Conditions are taken a little inside
 * the rule, by what offset, gain, contact and noise may hide, so that no finding is called missed at its limit; how far, each
 * says. For one channel.
 */
final class Due {
    private static final double SENSOR_KELVIN = 1;
    private static final double ARMED_VOLTS = 1.25;
    private static final long ARMED_MILLIS = 300_000;
    private static final long CARRIED_MILLIS = 5_400_000;
    private static final double LEFT_KELVIN = 5.5;

    private final NightPlan plan;
    private final double voltsMargin;
    private long loadOnMillis = Long.MAX_VALUE;
    private long loadOffMillis;
    private double untrippedVolts;
    private boolean trippedArmed;
    private double excessAtOnset;

    Due(NightPlan plan, double offsetVolts) {
        this.plan = plan;
        voltsMargin = offsetVolts + 5 * plan.voltsNoise() + 0.003;
    }

    /** The trouble begins. */
    void begins(Truth truth) {
        excessAtOnset = truth.excessKelvin();
    }

    /** A gap: what a rule needs unbroken begins anew. */
    void interrupted(long millis) {
        if (loadOnMillis != Long.MAX_VALUE) {
            loadOnMillis = millis;
        }
    }

    void follow(Truth truth) {
        boolean on = truth.loadOn();
        if (on && loadOnMillis == Long.MAX_VALUE) {
            loadOnMillis = truth.millis();
        } else if (!on && loadOnMillis != Long.MAX_VALUE) {
            loadOnMillis = Long.MAX_VALUE;
            loadOffMillis = truth.millis();
        }
        boolean tripped = truth.glance().tripped();
        if (!tripped) {
            untrippedVolts = truth.leadVolts();
            trippedArmed = on
                    && truth.phase() == Phase.DRAIN
                    && untrippedVolts > ARMED_VOLTS
                    && truth.millis() - loadOnMillis >= ARMED_MILLIS;
        }
    }

    double untrippedVolts() {
        return untrippedVolts;
    }

    /** How long the condition may stand before the finding counts as missed. */
    static long patienceMillis(FindingKind kind) {
        return switch (kind) {
            case HOT, LOAD_HOT, AMBIENT_HIGH, TIE_LOOSE -> 60_000;
            case WARMING -> 120_000;
            case REVERSED -> 10_000;
            case CUT_OFF, REBOUND -> 300_000;
            case LOAD_LOST, LEAD_OPEN -> 2_400_000;
            case LOAD_STUCK -> 3_900_000;
            case SENSOR_FAULT -> 1_200_000;
            default -> Long.MAX_VALUE;
        };
    }

    boolean isDue(FindingKind kind, Truth truth, Trouble standing, boolean askedForVerdict) {
        boolean voltsSeen = standing != Trouble.VOLTS_FROZEN
                && standing != Trouble.VOLTS_ABSURD
                && truth.glance().attached();
        return switch (kind) {
            case HOT -> !standing.blindsThermometer() && isHot(truth, SENSOR_KELVIN);
            case WARMING -> !standing.blindsThermometer() && isWarm(truth, SENSOR_KELVIN);
            case REVERSED ->
                voltsSeen
                        && !plan.board().converter().unipolar()
                        && !truth.bonded()
                        && truth.leadVolts() < -0.02 - voltsMargin;
            case CUT_OFF -> voltsSeen && truth.glance().tripped() && trippedArmed;
            case LOAD_LOST ->
                voltsSeen
                        && truth.loadOn()
                        && !truth.glance().loadConducts()
                        && truth.leadVolts() > 1
                        && !truth.announced();
            case LOAD_STUCK ->
                voltsSeen
                        && truth.phase() == Phase.REST
                        && !truth.loadOn()
                        && truth.glance().loadConducts();
            case TIE_LOOSE ->
                voltsSeen && truth.bonded() && !truth.announced() && truth.leadVolts() > 0.02 + voltsMargin;
            case LOAD_HOT -> truth.bankCelsius() > plan.procedure().heat().bankCelsius() + SENSOR_KELVIN;
            case AMBIENT_HIGH -> truth.airCelsius() > plan.procedure().heat().ambientCelsius() + SENSOR_KELVIN;
            case REBOUND ->
                voltsSeen
                        && isOpen(truth)
                        && truth.leadVolts() > plan.procedure().rest().limitVolts() + voltsMargin;
            case LEAD_OPEN -> !truth.glance().attached() && askedForVerdict;
            case SENSOR_FAULT -> sensorFails(standing, truth);
            default -> false;
        };
    }

    private static boolean isOpen(Truth truth) {
        boolean open = truth.stage() == Stage.REST || truth.stage() == Stage.PARTED;
        return open
                && !truth.loadOn()
                && !truth.glance().loadConducts()
                && !truth.glance().bonded();
    }

    private boolean sensorFails(Trouble standing, Truth truth) {
        return switch (standing) {
            case SENSOR_OPEN, SENSOR_ABSURD, SENSOR_FROZEN -> true;
            case SENSOR_OFF -> excessAtOnset >= LEFT_KELVIN;
            case VOLTS_ABSURD -> !truth.bonded();
            default -> false;
        };
    }

    boolean isHot(Truth truth, double marginKelvin) {
        Heat heat = plan.procedure().heat();
        boolean tied = truth.phase() == Phase.TIE_OFF;
        double trip = tied ? heat.tieOffHotCelsius() : heat.hotCelsius();
        double over = heat.tieOffHotKelvin() + truth.wideningKelvin(heat.withoutDummyKelvin());
        return truth.glance().sensorCelsius() >= trip + marginKelvin
                || (tied && !truth.announced() && truth.overReferenceKelvin() >= over + marginKelvin);
    }

    boolean isWarm(Truth truth, double marginKelvin) {
        Heat heat = plan.procedure().heat();
        if (truth.glance().sensorCelsius() >= heat.warmCelsius() + marginKelvin) {
            return true;
        }
        if (truth.announced()) {
            return false;
        }
        double limit =
                switch (truth.phase()) {
                    case DRAIN -> heat.drainWarmKelvin();
                    case TIE_OFF -> heat.tieOffWarmKelvin() + truth.wideningKelvin(heat.withoutDummyKelvin());
                    default -> heat.restWarmKelvin();
                };
        boolean carries = truth.phase() != Phase.TIE_OFF && truth.phase() != Phase.DRAIN;
        boolean settled = !carries || truth.millis() - loadOffMillis > CARRIED_MILLIS || marginKelvin < 0;
        double over = truth.phase() == Phase.TIE_OFF ? truth.overReferenceKelvin() : truth.excessKelvin();
        return settled && over >= limit + marginKelvin;
    }

    /** Whether the truth bears a finding out, generously: what this denies is false without an excuse. */
    boolean isBorneOut(FindingKind kind, Truth truth) {
        return switch (kind) {
            case HOT -> isHot(truth, -SENSOR_KELVIN);
            case WARMING -> isWarm(truth, -SENSOR_KELVIN);
            case REVERSED -> truth.leadVolts() < -0.01;
            case CUT_OFF -> truth.glance().tripped();
            case LEAD_OPEN -> !truth.glance().attached() || truth.glance().bonded();
            case LOAD_STUCK -> truth.glance().loadConducts();
            case LOAD_LOST -> truth.loadOn() && !truth.glance().loadConducts();
            case TIE_LOOSE -> !truth.glance().bonded();
            case LOAD_HOT -> truth.bankCelsius() > plan.procedure().heat().bankCelsius() - 2 * SENSOR_KELVIN;
            case AMBIENT_HIGH -> truth.airCelsius() > plan.procedure().heat().ambientCelsius() - SENSOR_KELVIN;
            case REBOUND -> truth.leadVolts() > plan.procedure().rest().limitVolts() - 2 * voltsMargin;
            default -> false;
        };
    }
}
