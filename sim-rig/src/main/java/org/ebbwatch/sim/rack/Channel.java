package org.ebbwatch.sim.rack;

import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.sim.cell.CellCircuit;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;

/**
 * One channel: what is on it, how its load stands, what its sensors show. The load's resistor sits at the board's side of the
 * leads: when the leads fall off it stays across the input.
 */
final class Channel {
    private static final double BOND_OHMS = 0.01;
    private static final double OPEN_TERMINALS_VOLTS = 0.004;
    private static final double AMPERES_NOISE_COUNTS = 1.5;
    private static final double COUNTS_PER_AMPERE = 1e9 / ConverterSpec.NANOAMPERES_PER_COUNT;

    final int number;
    final ChannelSpec spec;
    final Effects effects = new Effects();
    final Thermistor thermistor;
    final VoltsInput input;
    final CellCircuit circuit = new CellCircuit();

    Occupant occupant;
    boolean switchClosed;
    boolean handClosed;
    SeriesString string;

    private final double actualOhms;
    private double stepSeconds = 1;
    private double loadAmperes;
    private double loadJoules;
    private double externalVolts;
    private int amperesCounts;

    private LeadOutcome leadOutcome = LeadOutcome.NOT_DONE;
    private int voltsBeforePull;
    private int voltsDuringPull;

    Channel(int number, ChannelSpec spec, ConverterSpec converter, Randomness errors, double celsius) {
        this.number = number;
        this.spec = spec;
        actualOhms = spec.loadOhms() * (1 + spec.loadTolerance() * (2 * errors.nextDouble() - 1));
        thermistor = new Thermistor(converter, errors, celsius);
        input = new VoltsInput(converter, errors);
        handClosed = spec.handLoaded();
    }

    void setStep(double seconds) {
        stepSeconds = seconds;
        thermistor.setStep(seconds);
        if (occupant != null) {
            occupant.cell.setStep(seconds);
        }
    }

    void place(Occupant newOccupant) {
        occupant = newOccupant;
        if (newOccupant != null) {
            newOccupant.cell.setStep(stepSeconds);
        }
    }

    /** Whether the load conducts, whatever the switch says. */
    boolean loadConducts() {
        return spec.loadOhms() > 0 && !effects.loadLost && (switchClosed || handClosed || effects.loadStuck);
    }

    private double loadOhms() {
        return actualOhms * effects.loadFactor + spec.leadOhms();
    }

    /** Whether the leads reach a cell that can give current. */
    boolean isReachable() {
        return occupant != null && !effects.leadOpen && occupant.isConnectedInside();
    }

    boolean isInContainer() {
        return spec.role() == ChannelRole.WATCH || (occupant != null && occupant.contained);
    }

    /** Begins the step of the cell and hangs on its terminals what hangs there. */
    void begin() {
        occupant.cell.begin();
        circuit.clear();
        if (effects.shortOhms < Effects.NONE) {
            circuit.addOhms(effects.shortOhms);
        }
        if (!occupant.isConnectedInside()) {
            return;
        }
        if (occupant.bonded) {
            circuit.addOhms(effects.tieLoose ? effects.tieOhms : BOND_OHMS);
        }
        if (!effects.leadOpen) {
            if (string == null && loadConducts()) {
                circuit.addOhms(loadOhms());
            }
            if (effects.leakOhms < Effects.NONE) {
                circuit.addSource(occupant.polarity() * effects.leakVolts, effects.leakOhms);
            }
        }
    }

    /** Finds the current with so much more forced through the channel from outside; gives the channel's volts. */
    double settle(double throughAmperes) {
        return occupant.polarity() * circuit.settle(occupant.cell, occupant.polarity() * throughAmperes);
    }

    /** Ends the step with the current found last. */
    void finish(double airCelsius) {
        occupant.cell.finish(circuit.amperes());
        double volts = occupant.cell.volts();
        double shortAmperes = volts / effects.shortOhms;
        boolean conducts = string == null && isReachable() && loadConducts();
        loadAmperes = conducts ? occupant.polarity() * volts / loadOhms() : 0;
        loadJoules = loadAmperes * loadAmperes * actualOhms * effects.loadFactor * stepSeconds;
        externalVolts = occupant.polarity() * volts;
        if (!spec.fourWire()) {
            externalVolts -= loadAmperes * spec.leadOhms();
        }
        double heat = effects.warmingWatts + effects.runawayWatts + shortAmperes * volts;
        occupant.cell.warm(heat * stepSeconds, airCelsius);
        double charger = effects.leadOpen || effects.leakOhms == Effects.NONE ? 0 : effects.leakVolts;
        occupant.guard(circuit.amperes() - shortAmperes, charger);
        if (occupant.tripped) {
            loadAmperes = 0;
        }
    }

    /** Moves the sensors on; the cell's step, if there is a cell, has ended. */
    void stepSensors(double airCelsius, double ownCelsius) {
        if (occupant == null) {
            loadAmperes = 0;
            loadJoules = 0;
        }
        thermistor.step(occupant == null ? ownCelsius : occupant.cell.celsius(), airCelsius, effects.sensorOff);
    }

    /** Takes the readings of a scan. */
    void read(double intervalSeconds, boolean withAmperes, Randomness noise) {
        thermistor.read(effects, noise);
        if (!spec.measuresVolts()) {
            return;
        }
        if (isFloating()) {
            input.read(input.drift(effects.floatVolts, intervalSeconds, noise), effects, noise);
        } else {
            input.hold();
            input.read(heldVolts(), effects, noise);
        }
        if (withAmperes) {
            double current = string == null ? loadAmperes : string.amperes();
            amperesCounts = (int) Math.rint(current * COUNTS_PER_AMPERE + noise.nextNormal() * AMPERES_NOISE_COUNTS);
        }
    }

    private boolean isFloating() {
        if (effects.senseOpen) {
            return true;
        }
        return (occupant == null || effects.leadOpen) && !isResistorAcross();
    }

    private boolean isResistorAcross() {
        return effects.resistorAcross || loadConducts();
    }

    private double heldVolts() {
        if (occupant == null || effects.leadOpen) {
            return 0;
        }
        if (!occupant.isConnectedInside()) {
            return loadConducts() || occupant.bonded ? 0 : OPEN_TERMINALS_VOLTS;
        }
        return externalVolts;
    }

    /**
     * Pulls weakly at the input after a reading and sees whether it moves: by at most a tenth of what an open lead does, it
     * is attached, by at least half of it, open; between them nothing is decided.
     */
    void checkLead(Randomness noise) {
        voltsBeforePull = input.counts();
        if (switchClosed) {
            giveUpLeadCheck();
            return;
        }
        double held = isFloating() ? 0 : heldVolts();
        double ohms = ohmsSeenByPull();
        double pulled = held + (VoltsInput.PULL_VOLTS - held) * ohms / (ohms + VoltsInput.PULL_OHMS);
        voltsDuringPull = input.convert(pulled, noise.nextNormal());
        double moved = Math.abs(voltsDuringPull - voltsBeforePull) * (ConverterSpec.NANOVOLTS_PER_COUNT / 1e9);
        if (moved <= VoltsInput.OPEN_MOVES_VOLTS / 10) {
            leadOutcome = LeadOutcome.ATTACHED;
        } else {
            leadOutcome = moved >= VoltsInput.OPEN_MOVES_VOLTS / 2 ? LeadOutcome.OPEN : LeadOutcome.NOT_DONE;
        }
    }

    /** Ends a lead check without an outcome: both volts are the present ones. */
    void giveUpLeadCheck() {
        leadOutcome = LeadOutcome.NOT_DONE;
        voltsBeforePull = input.counts();
        voltsDuringPull = voltsBeforePull;
    }

    private double ohmsSeenByPull() {
        if (isFloating()) {
            return VoltsInput.BLEED_OHMS;
        }
        if (isReachable()) {
            return occupant.cell.spec().ohms();
        }
        boolean isHeld = isResistorAcross() || (occupant != null && occupant.bonded);
        return isHeld ? actualOhms : VoltsInput.BLEED_OHMS;
    }

    LeadOutcome leadOutcome() {
        return leadOutcome;
    }

    int voltsBeforePull() {
        return voltsBeforePull;
    }

    int voltsDuringPull() {
        return voltsDuringPull;
    }

    int amperesCounts() {
        return amperesCounts;
    }

    /** Heat in the load's resistor in the last step, joules. */
    double loadJoules() {
        return loadJoules;
    }

    /** Current through the channel's own load in the last step. */
    double loadAmperes() {
        return loadAmperes;
    }

    /** Voltage that a perfect meter would read across the cell's leads at the channel. */
    double externalVolts() {
        return isReachable() ? externalVolts : 0;
    }

    /** The state byte of the last reading. */
    int state(boolean withAmperes) {
        int state = thermistor.state();
        if (spec.measuresVolts()) {
            state |= input.state();
            if (withAmperes) {
                state |= Reading.AMPERES_VALID;
            }
        }
        return switchClosed ? state | Reading.LOAD_APPLIED : state;
    }
}
