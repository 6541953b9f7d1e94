package org.ebbwatch.night;

import java.util.List;
import java.util.function.UnaryOperator;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.sim.scenario.AmbientSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;

/**
 * Everything about one night that is drawn before it begins: a board with two cells, of which the first has the trouble.
 *
 * @param seed decides all of it
 * @param mishap what goes wrong
 * @param cells on channels 0 and 1
 * @param procedure both are judged by
 * @param board what they stand on
 * @param calmIntervalMillis between scans while nothing happens
 * @param lostShare share of scans lost on the wire
 * @param conduct how it is gone through
 */
record NightPlan(
        long seed,
        Mishap mishap,
        List<CellPlan> cells,
        Procedure procedure,
        BoardSpec board,
        long calmIntervalMillis,
        double lostShare,
        Conduct conduct) {
    /** A count of every simulated board: 100 microvolts and 0.02 kelvin. */
    private static final double COUNTS_PER_MILLIVOLT = 10;

    private static final double COUNTS_PER_KELVIN = 50;
    private static final double WARMEST_ROOM_CELSIUS = 42;

    static NightPlan draw(long seed, Trouble trouble) {
        return draw(seed, trouble, UnaryOperator.identity());
    }

    /** With cells that differ from those drawn. */
    static NightPlan draw(long seed, Trouble trouble, UnaryOperator<CellPlan> otherwise) {
        Dice dice = new Dice(seed);
        Procedure procedure = dice.chance(0.1) ? Procedure.strict() : Procedure.careful();
        double limitVolts = procedure.rest().limitVolts();
        boolean switched = !dice.chance(0.25);
        CellPlan first = CellPlan.draw("first", dice, trouble, switched, limitVolts);
        CellPlan second = CellPlan.draw(
                "second",
                dice,
                trouble == Trouble.SWAPPED_UNSEEN && dice.chance(0.3) ? Trouble.ARRIVES_DEAD : Trouble.NOTHING,
                switched,
                limitVolts);
        List<CellPlan> cells = List.of(otherwise.apply(first), otherwise.apply(second));
        ConverterSpec converter = new ConverterSpec(
                dice.chance(0.15),
                COUNTS_PER_MILLIVOLT * dice.logBetween(0.05, 5),
                COUNTS_PER_KELVIN * dice.logBetween(0.02, 0.3),
                dice.logBetween(100, 2000),
                dice.logBetween(100, 1000),
                dice.between(0.1, 0.5));
        double celsius = dice.between(5, 35);
        double swing = dice.between(0, Math.min(10, 2 * Math.min(celsius - 5, 35 - celsius) + 2));
        double mostKelvin = Math.max(3, Math.min(20, WARMEST_ROOM_CELSIUS - celsius - swing / 2));
        Mishap mishap = Mishap.draw(trouble, dice, cells.get(0).drainHours(), mostKelvin);
        BoardSpec board = BoardSpec.build(
                        "NIGHT", cells.stream().map(CellPlan::channel).toList())
                .converter(converter)
                .measuresAmperes(dice.chance(0.3))
                .checksLeads(!dice.chance(0.2))
                .hostTimeoutMillis(0)
                .ambient(new AmbientSpec(celsius, swing, dice.between(0, 24)))
                .thermometers(true, dice.chance(0.7), 0, true)
                .done();
        long calm = trouble == Trouble.SCANS_LOST || dice.chance(0.05) ? 2_000 : 5_000;
        double lost = trouble == Trouble.SCANS_LOST ? dice.logBetween(0.001, 0.5) : 0;
        return new NightPlan(seed, mishap, cells, procedure, board, calm, lost, Conduct.USUAL);
    }

    /** The same night, judged by another procedure and gone through otherwise. */
    NightPlan with(Procedure other, Conduct how) {
        return new NightPlan(seed, mishap, cells, other, board, calmIntervalMillis, lostShare, how);
    }

    /** The same night on a board that scans so often from beginning to end. */
    NightPlan every(long millis) {
        Conduct how = new Conduct(conduct.longestMillis(), millis, conduct.steadfast());
        return new NightPlan(seed, mishap, cells, procedure, board, millis, lostShare, how);
    }

    double drainHours() {
        return cells.stream().mapToDouble(CellPlan::drainHours).max().orElse(0);
    }

    double voltsNoise() {
        return board.converter().voltsNoiseCounts() / COUNTS_PER_MILLIVOLT / 1000;
    }

    double celsiusNoise() {
        return board.converter().celsiusNoiseCounts() / COUNTS_PER_KELVIN;
    }

    boolean hasDummy() {
        return board.channels().stream()
                .anyMatch(channel -> channel.role() == org.ebbwatch.rig.message.ChannelRole.DUMMY);
    }
}
