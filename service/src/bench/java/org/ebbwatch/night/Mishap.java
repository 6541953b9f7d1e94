package org.ebbwatch.night;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.Trigger;

/**
 * What goes wrong in a night and when.
 *
 * @param trouble what
 * @param stage counted from when this stage is first reached on channel 0
 * @param offsetMillis so long after that
 * @param lastsMillis for so long, {@link Fault#FOR_EVER} for ever
 * @param strengths of the simulator's fault
 */
record Mishap(Trouble trouble, Stage stage, long offsetMillis, long lastsMillis, Map<String, Double> strengths) {

    /** @param mostKelvin by which the room may warm */
    static Mishap draw(Trouble trouble, Dice dice, double drainHours, double mostKelvin) {
        List<Stage> stages = trouble.stages();
        if (stages.isEmpty()) {
            return new Mishap(trouble, Stage.CHECK_IN, 0, Fault.FOR_EVER, Map.of());
        }
        Stage stage = dice.pick(stages);
        double span =
                switch (stage) {
                    case DRAINING -> trouble == Trouble.BANK_HOT ? drainHours / 4 : drainHours;
                    case HOLD -> 12;
                    case REST, TIED -> 24;
                    default -> 1;
                };
        long offset = dice.millis(0, span);
        long lasts = dice.chance(0.6) ? Fault.FOR_EVER : dice.millis(0.02, 8);
        return switch (trouble) {
            case BOARD_SILENT, BOARD_RESTARTS, SWAPPED_UNSEEN ->
                new Mishap(
                        trouble,
                        stage,
                        offset,
                        Math.round(dice.logBetween(8_000, 4 * 3.6e6)),
                        strengths(trouble, dice, mostKelvin));
            case CUTS_OFF, TURNED, WARMS, RUNS_AWAY, SHORTS ->
                new Mishap(trouble, stage, offset, Fault.FOR_EVER, strengths(trouble, dice, mostKelvin));
            default -> new Mishap(trouble, stage, offset, lasts, strengths(trouble, dice, mostKelvin));
        };
    }

    private static Map<String, Double> strengths(Trouble trouble, Dice dice, double mostKelvin) {
        Map<String, Double> strengths = new HashMap<>();
        switch (trouble) {
            case LEAD_OFF -> {
                strengths.put("resistorAcross", dice.chance(0.5) ? 1.0 : 0.0);
                strengths.put("floatVolts", floatVolts(dice));
            }
            case SENSE_OFF -> strengths.put("floatVolts", floatVolts(dice));
            case LOAD_WRONG -> strengths.put("factor", dice.logBetween(0.1, 1000));
            case CHARGER -> {
                strengths.put("volts", dice.chance(0.4) ? dice.between(0.3, 0.6) : dice.between(0.6, 4.2));
                strengths.put("ohms", dice.logBetween(0.5, 200));
            }
            case LEAKS -> {
                strengths.put("volts", 0.0);
                strengths.put("ohms", dice.logBetween(5, 5000));
            }
            case SENSOR_OFF -> strengths.put("tauSeconds", dice.logBetween(5, 30));
            case SENSOR_OPEN -> strengths.put("flagged", dice.chance(0.5) ? 1.0 : 0.0);
            case SENSOR_ABSURD -> strengths.put("celsius", dice.pick(List.of(3.4e38, -127.0, 85.0, 1000.0, -300.0)));
            case VOLTS_ABSURD -> strengths.put("volts", dice.pick(List.of(3.4e38, -3.4e38, 6.0, -6.0)));
            case WARMS -> {
                strengths.put("watts", dice.logBetween(0.1, 10));
                strengths.put("riseMinutes", dice.logBetween(0.5, 120));
            }
            case RUNS_AWAY -> {
                strengths.put("watts", dice.logBetween(0.2, 5));
                strengths.put("doublingSeconds", dice.logBetween(5, 300));
                strengths.put("kilojoules", dice.logBetween(5, 50));
            }
            case SHORTS -> {
                strengths.put("fromOhms", 1000.0);
                strengths.put("toOhms", dice.logBetween(0.05, 100));
                strengths.put("overHours", dice.logBetween(0.01, 10));
            }
            case TIE_OPENS -> strengths.put("ohms", dice.logBetween(1, 1e9));
            case SWAPPED_UNSEEN -> strengths.put("with", 1.0);
            case BANK_HOT -> strengths.put("factor", dice.logBetween(30, 500));
            case ROOM_WARMS -> {
                strengths.put("kelvin", dice.between(2, mostKelvin));
                strengths.put("tauMinutes", dice.logBetween(10, 180));
            }
            case SUN -> {
                strengths.put("kelvin", dice.between(2, mostKelvin));
                strengths.put("tauMinutes", dice.logBetween(3, 30));
            }
            default -> {}
        }
        return strengths;
    }

    private static double floatVolts(Dice dice) {
        return dice.chance(0.7) ? dice.between(-0.1, 0.6) : dice.between(-0.4, 4);
    }

    /** As the simulator takes it, on channel 0 or on the board. */
    Fault fault(long atMillis) {
        boolean onBoard = trouble.ofBoard && trouble != Trouble.SWAPPED_UNSEEN;
        Fault fault = onBoard
                ? Fault.onBoard(trouble.fault, Trigger.at(atMillis))
                : Fault.on(0, trouble.fault, Trigger.at(atMillis));
        Fault strong = fault.with(strengths);
        return lastsMillis == Fault.FOR_EVER || trouble == Trouble.SWAPPED_UNSEEN
                ? strong
                : strong.lasting(lastsMillis);
    }
}
