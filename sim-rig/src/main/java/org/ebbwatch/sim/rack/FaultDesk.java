package org.ebbwatch.sim.rack;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultSchedule;

/** Carries faults out on the board: what changes at once when they begin and end, and what grows while they stand. */
final class FaultDesk implements FaultSchedule.Effect {
    private static final double RUNAWAY_SHORT_CELSIUS = 160;
    private static final double RUNAWAY_SHORT_OHMS = 0.05;

    private final Bench bench;
    private final Electronics electronics;
    private final List<Growing> growing = new ArrayList<>();

    /** A fault whose strength changes with time. */
    private static final class Growing {
        private final Fault fault;
        private double seconds;
        private double joules;

        private Growing(Fault fault) {
            this.fault = fault;
        }
    }

    FaultDesk(Bench bench, Electronics electronics) {
        this.bench = bench;
        this.electronics = electronics;
    }

    @Override
    public void begin(Fault fault) {
        switch (fault.kind()) {
            case SILENT -> electronics.setSilent(true);
            case REBOOT -> reboot(fault);
            case CORRUPT_BYTES -> electronics.outbox().setCorruptShare(fault.strength("perMillion") * 1e-6);
            case DROPPED_BYTES -> electronics.outbox().setDropShare(fault.strength("perMillion") * 1e-6);
            case AMBIENT_RISE -> bench.surroundings().rise(fault.strength("kelvin"), 60 * fault.strength("tauMinutes"));
            case SUN -> bench.surroundings().sun(fault.strength("kelvin"), 60 * fault.strength("tauMinutes"));
            case ODD_CLOCK -> electronics.setClockPercent(fault.strength("percent"));
            case CONTACT -> electronics.setContact((int) fault.strength("input"), true);
            case HOT_BANK -> bench.surroundings().setBankFactor(fault.strength("factor"));
            case SWAPPED -> bench.swap(fault.channel(), (int) fault.strength("with"));
            case WARMING, RUNAWAY, INTERNAL_SHORT -> growing.add(new Growing(fault));
            default -> onChannel(fault, bench.channel(fault.channel()), true);
        }
    }

    @Override
    public void end(Fault fault) {
        switch (fault.kind()) {
            case SILENT -> electronics.setSilent(false);
            case REBOOT -> electronics.powerOn();
            case CORRUPT_BYTES -> electronics.outbox().setCorruptShare(0);
            case DROPPED_BYTES -> electronics.outbox().setDropShare(0);
            case AMBIENT_RISE -> bench.surroundings().rise(0, 60 * fault.strength("tauMinutes"));
            case SUN -> bench.surroundings().sun(0, 60 * fault.strength("tauMinutes"));
            case ODD_CLOCK -> electronics.setClockPercent(0);
            case CONTACT -> electronics.setContact((int) fault.strength("input"), false);
            case HOT_BANK -> bench.surroundings().setBankFactor(1);
            case SWAPPED, PROTECTION_CUT_OFF -> {}
            case WARMING, RUNAWAY, INTERNAL_SHORT -> endGrowing(fault);
            default -> onChannel(fault, bench.channel(fault.channel()), false);
        }
    }

    private void reboot(Fault fault) {
        electronics.powerOff();
        if (fault.lastsMillis() == Fault.FOR_EVER) {
            electronics.powerOn();
        }
    }

    private static void onChannel(Fault fault, Channel channel, boolean begins) {
        Effects effects = channel.effects;
        switch (fault.kind()) {
            case PROTECTION_CUT_OFF -> {
                if (channel.occupant != null) {
                    channel.occupant.tripped = true;
                }
            }
            case REVERSED -> {
                if (channel.occupant != null) {
                    channel.occupant.reversed = !channel.occupant.reversed;
                }
            }
            case OPEN_LEAD -> {
                effects.leadOpen = begins;
                effects.resistorAcross = begins && fault.strength("resistorAcross") >= 0.5;
                effects.floatVolts = fault.strength("floatVolts");
            }
            case OPEN_SENSE -> {
                effects.senseOpen = begins;
                effects.floatVolts = fault.strength("floatVolts");
            }
            case LOAD_LOST -> effects.loadLost = begins;
            case LOAD_STUCK -> effects.loadStuck = begins;
            case WRONG_LOAD -> effects.loadFactor = begins ? fault.strength("factor") : 1;
            case CHARGER_LEAK -> {
                effects.leakVolts = fault.strength("volts");
                effects.leakOhms = begins ? fault.strength("ohms") : Effects.NONE;
            }
            case THERMISTOR_OFF -> {
                effects.sensorOff = begins;
                channel.thermistor.setTau(begins ? fault.strength("tauSeconds") : Thermistor.TAU_SECONDS);
            }
            case THERMISTOR_OPEN -> {
                effects.sensorOpen = begins;
                effects.sensorOpenFlagged = fault.strength("flagged") >= 0.5;
            }
            case FROZEN_CELSIUS -> effects.celsiusFrozen = begins;
            case ABSURD_CELSIUS -> effects.absurdCelsius = begins ? fault.strength("celsius") : Double.NaN;
            case FROZEN_VOLTS -> effects.voltsFrozen = begins;
            case ABSURD_VOLTS -> effects.absurdVolts = begins ? fault.strength("volts") : Double.NaN;
            case LOOSE_TIE -> {
                effects.tieLoose = begins;
                effects.tieOhms = fault.strength("ohms");
            }
            default -> throw new IllegalStateException(fault.kind() + " is no fault of a channel alone");
        }
    }

    private void endGrowing(Fault fault) {
        growing.removeIf(one -> one.fault.equals(fault));
        Effects effects = bench.channel(fault.channel()).effects;
        switch (fault.kind()) {
            case WARMING -> effects.warmingWatts = 0;
            case RUNAWAY -> effects.runawayWatts = 0;
            default -> effects.shortOhms = Effects.NONE;
        }
    }

    /** Lets the faults that grow do so for a step. */
    void grow(double seconds) {
        for (int i = 0; i < growing.size(); i++) {
            Growing one = growing.get(i);
            one.seconds += seconds;
            Channel channel = bench.channel(one.fault.channel());
            switch (one.fault.kind()) {
                case WARMING ->
                    channel.effects.warmingWatts =
                            one.fault.strength("watts") * grown(one, 60 * one.fault.strength("riseMinutes"));
                case RUNAWAY -> runAway(one, channel, seconds);
                default ->
                    channel.effects.shortOhms = one.fault.strength("fromOhms")
                            * StrictMath.pow(
                                    one.fault.strength("toOhms") / one.fault.strength("fromOhms"),
                                    grown(one, 3600 * one.fault.strength("overHours")));
            }
        }
    }

    private static double grown(Growing one, double overSeconds) {
        return one.seconds >= overSeconds ? 1 : one.seconds / overSeconds;
    }

    private static void runAway(Growing one, Channel channel, double seconds) {
        double doublings = one.seconds / one.fault.strength("doublingSeconds");
        double watts = Math.min(
                one.fault.strength("mostWatts"),
                one.fault.strength("watts") * StrictMath.pow(2, Math.min(doublings, 60)));
        boolean spent = one.joules >= 1000 * one.fault.strength("kilojoules");
        channel.effects.runawayWatts = spent ? 0 : watts;
        one.joules += channel.effects.runawayWatts * seconds;
        if (channel.occupant != null && channel.occupant.cell.celsius() > RUNAWAY_SHORT_CELSIUS) {
            channel.effects.shortOhms = RUNAWAY_SHORT_OHMS;
        }
    }
}
