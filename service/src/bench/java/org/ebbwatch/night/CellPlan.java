package org.ebbwatch.night;

import java.util.Optional;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.cell.Cell;
import org.ebbwatch.sim.cell.CellCircuit;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Relaxation;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.scenario.ChannelSpec;

/**
 * One cell of a night and its load.
 *
 * @param spec what it is
 * @param loadOhms its resistor
 * @param switched whether the board switches that resistor
 * @param drainHours about how long it takes to 0.1 V
 */
record CellPlan(CellSpec spec, double loadOhms, boolean switched, double drainHours) {
    private static final double STEP_SECONDS = 60;
    private static final double DRAINED_VOLTS = 0.1;
    private static final double HOLD_HOURS = 12;
    private static final double MEAN_VOLTS = 3.7;
    private static final int BISECTIONS = 7;

    static CellPlan draw(String tag, Dice dice, Trouble trouble, boolean switched, double limitVolts) {
        boolean strong = trouble == Trouble.BANK_HOT;
        double ampereHours = strong ? dice.logBetween(3, 10) : dice.logBetween(0.1, 10);
        double loadOhms = MEAN_VOLTS / (ampereHours * dice.logBetween(strong ? 1 / 8.0 : 1 / 50.0, 1 / 3.0));
        double health = dice.between(0.4, 1);
        double charge = strong || dice.chance(0.15) ? dice.between(0.6, 1) : dice.between(0.03, 0.35);
        boolean lfp = dice.chance(1 / 3.0);
        double ohms = 0.15 / ampereHours * dice.logBetween(0.5, 5);
        CellSpec.Builder cell = CellSpec.build(
                        tag,
                        lfp ? org.ebbwatch.sim.cell.Chemistry.LFP : org.ebbwatch.sim.cell.Chemistry.NMC,
                        ampereHours)
                .health(health)
                .stateOfCharge(charge)
                .ohms(ohms);
        boolean diffuses = dice.chance(1 / 3.0);
        cell.relaxation(
                diffuses
                        ? new Relaxation.Diffusion(
                                ohms * dice.between(0.5, 2), dice.between(10, 60), dice.logBetween(1500, 15_000))
                        : new Relaxation.Exponentials(
                                ohms * dice.between(0.5, 2),
                                dice.between(10, 60),
                                ohms * dice.between(1, 4),
                                dice.logBetween(500, 5000)));
        switch (trouble) {
            case PROTECTED -> cell.protectionBoard(dice.between(2.0, 3.0));
            case ARRIVES_DISCONNECTED -> cell.arrival(Arrival.DISCONNECTED);
            case ARRIVES_DEAD -> cell.arrival(Arrival.DEAD);
            case ARRIVES_TURNED -> cell.reversed();
            default -> {}
        }
        double slowHours = dice.logBetween(4, 80);
        double kind = dice.between(0, 1);
        double target = limitVolts + dice.between(-0.2, 0.2);
        if (kind < 0.5) {
            cell.slowShare(new SlowShare(tuned(cell, loadOhms, slowHours, target), slowHours));
        } else {
            cell.slowShare(new SlowShare(tuned(cell, loadOhms, slowHours, dice.between(0.03, 1.5)), slowHours));
        }
        cell.stateOfCharge(charge);
        double hours = charge * health * ampereHours / (MEAN_VOLTS / loadOhms);
        return new CellPlan(cell.done(), loadOhms, switched, hours);
    }

    /** The slow share with which the cell rests at so many volts 24 h after its first hold, as near as bisection comes. */
    private static double tuned(CellSpec.Builder cell, double loadOhms, double slowHours, double targetVolts) {
        double low = 1e-5;
        double high = 0.05;
        for (int step = 0; step < BISECTIONS; step++) {
            double share = StrictMath.sqrt(low * high);
            CellSpec tried = cell.slowShare(new SlowShare(share, slowHours))
                    .stateOfCharge(0.1)
                    .done();
            if (restedVolts(tried, loadOhms) > targetVolts) {
                high = share;
            } else {
                low = share;
            }
        }
        return StrictMath.sqrt(low * high);
    }

    private static double restedVolts(CellSpec spec, double loadOhms) {
        Cell cell = new Cell(spec, 1, 1, 20);
        cell.setStep(STEP_SECONDS);
        CellCircuit circuit = new CellCircuit();
        circuit.addOhms(loadOhms);
        double heldHours = 0;
        for (int step = 0; step < 20_000 && heldHours < HOLD_HOURS; step++) {
            cell.begin();
            double volts = circuit.settle(cell, 0);
            cell.finish(circuit.amperes());
            heldHours = volts < DRAINED_VOLTS ? heldHours + STEP_SECONDS / 3600 : 0;
        }
        return cell.restedVolts(24, 0);
    }

    /** The same cell with a tenth of the material in poor contact: nearly all of it empties at the pace of its diffusion. */
    CellPlan quick() {
        SlowShare tenth =
                new SlowShare(spec.slowShare().share() / 10, spec.slowShare().hours());
        CellSpec quick = new CellSpec(
                spec.tag(),
                spec.chemistry(),
                spec.ratedAmpereHours(),
                spec.health(),
                spec.spread(),
                spec.stateOfCharge(),
                spec.ohms(),
                spec.relaxation(),
                tenth,
                spec.cutOffVolts(),
                spec.arrival(),
                spec.reversed());
        return new CellPlan(quick, loadOhms, switched, drainHours);
    }

    ChannelSpec channel() {
        return new ChannelSpec(ChannelRole.CELL, Optional.of(spec), loadOhms, 0.01, 0.06, switched, false, true);
    }

    /** What a person writes on the card. */
    CellCard card() {
        Chemistry chemistry =
                spec.chemistry() == org.ebbwatch.sim.cell.Chemistry.LFP ? Chemistry.LFP : Chemistry.LAYERED_OXIDE;
        return new CellCard(spec.tag(), chemistry, spec.ratedAmpereHours(), loadOhms, switched, false);
    }
}
