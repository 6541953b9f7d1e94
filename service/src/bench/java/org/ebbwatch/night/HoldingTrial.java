package org.ebbwatch.night;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.judge.procedure.Procedure.Drain;

/**
 * The same sound cells drained with one hold and with another.
 *
 * @param seeds of the nights
 * @param cells how their cells differ from those drawn
 */
record HoldingTrial(List<Long> seeds, UnaryOperator<CellPlan> cells) {
    private static final Conduct TO_THE_END = new Conduct(Duration.ofDays(15).toMillis(), 1_000, true);
    private static final double MILLIS_PER_HOUR = 3.6e6;

    /** Whole passages, by the judge. */
    List<Course> courses(Duration hold) throws InterruptedException {
        Procedure procedure = holding(hold);
        return each(plan -> {
            List<Course> two = List.of(new Course(), new Course());
            Onlooker onlooker = (channel, millis, event) -> two.get(channel).sees(millis, event);
            new NightRun(plan.with(procedure, TO_THE_END), new Tally(), line -> {}, onlooker).run();
            return two;
        });
    }

    /** Rounds by the cell's voltage alone. */
    List<BareRounds> bare(Duration hold, boolean doubles) throws InterruptedException {
        double holdHours = hold.toMillis() / MILLIS_PER_HOUR;
        return each(plan -> plan.cells().stream()
                .map(cell -> BareRounds.of(cell, Procedure.careful(), holdHours, doubles))
                .toList());
    }

    private <T> List<T> each(Goes<T> goes) throws InterruptedException {
        List<Callable<List<T>>> work = seeds.stream()
                .<Callable<List<T>>>map(seed -> () -> goes.through(NightPlan.draw(seed, Trouble.NOTHING, cells)))
                .toList();
        List<T> all = new ArrayList<>();
        Crew.run(work).forEach(all::addAll);
        return all;
    }

    /** Goes through one night, with a result for each of its cells. */
    private interface Goes<T> {
        List<T> through(NightPlan plan);
    }

    private static Procedure holding(Duration hold) {
        Procedure careful = Procedure.careful();
        Drain drain = careful.drain();
        return new Procedure(
                "held " + hold,
                1,
                new Drain(drain.provenVolts(), drain.limitVolts(), hold.toMillis(), drain.longestMillis()),
                careful.rest(),
                careful.tieOff(),
                careful.heat(),
                careful.plausible());
    }
}
