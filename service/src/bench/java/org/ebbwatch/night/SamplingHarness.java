package org.ebbwatch.night;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.judge.procedure.Procedure.Drain;
import org.ebbwatch.judge.procedure.Procedure.Rest;
import org.ebbwatch.judge.procedure.Procedure.TieOff;

/**
 * Whether the rules hold by charge and time or by the number of samples: the same nights, sound and troubled, on boards that
 * scan every 0.1 to 60 s. The command and the results are in {@code docs/benchmarks/sampling.md}.
 */
public final class SamplingHarness {
    private static final List<Long> INTERVALS = List.of(100L, 500L, 1_000L, 2_000L, 5_000L, 10_000L, 30_000L, 60_000L);
    private static final long QUICK_MILLIS = 500;
    private static final double LONGEST_DRAIN_HOURS = 4;
    private static final Conduct SHORT = new Conduct(Duration.ofHours(36).toMillis(), 1_000, true);

    /** What the nights on boards of one interval gave; courses by seed and channel. */
    record Sweep(long intervalMillis, Tally tally, Map<String, Course> soundCourses) {}

    private record Night(NightPlan plan, Tally tally, List<Course> courses) {}

    private SamplingHarness() {}

    /** {@code NIGHTS_OF_EACH_TROUBLE FIRST_SEED FILE}. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        int ofEach = Integer.parseInt(arguments[0]);
        long firstSeed = Long.parseLong(arguments[1]);
        Path document = Path.of(arguments[2]).toAbsolutePath();
        List<Sweep> sweeps = new ArrayList<>();
        for (long interval : INTERVALS) {
            sweeps.add(sweep(interval, plans(firstSeed, interval < QUICK_MILLIS ? 1 : ofEach)));
        }
        Files.createDirectories(document.getParent());
        Files.writeString(document, new SamplingReport(sweeps).text(ofEach, firstSeed));
    }

    /** So many nights of each trouble, and as many more without one as go round, all soon drained. */
    private static List<NightPlan> plans(long firstSeed, int ofEach) {
        Map<Trouble, Integer> taken = new EnumMap<>(Trouble.class);
        List<NightPlan> plans = new ArrayList<>();
        int due = ofEach * Nights.roundSize();
        for (long seed = firstSeed; plans.size() < due; seed++) {
            Trouble trouble = Nights.troubleOf(seed);
            int most = ofEach * Nights.timesInRound(trouble);
            if (taken.getOrDefault(trouble, 0) < most) {
                NightPlan plan = NightPlan.draw(seed, trouble);
                if (plan.drainHours() < LONGEST_DRAIN_HOURS) {
                    taken.merge(trouble, 1, Integer::sum);
                    plans.add(plan.with(brief(), SHORT));
                }
            }
        }
        return plans;
    }

    /** As careful, but with holds, rests and watches of hours, so that many passages can be gone through. */
    private static Procedure brief() {
        Procedure careful = Procedure.careful();
        return new Procedure(
                "brief",
                1,
                new Drain(
                        careful.drain().provenVolts(),
                        careful.drain().limitVolts(),
                        Duration.ofHours(1).toMillis(),
                        careful.drain().longestMillis()),
                new Rest(
                        careful.rest().limitVolts(),
                        Duration.ofHours(3).toMillis(),
                        careful.rest().recoveryMillis()),
                new TieOff(
                        Duration.ofHours(3).toMillis(),
                        Duration.ofHours(1).toMillis(),
                        careful.tieOff().openMillis(),
                        careful.tieOff().longestOpenMillis(),
                        careful.tieOff().looseVolts()),
                careful.heat(),
                careful.plausible());
    }

    private static Sweep sweep(long interval, List<NightPlan> plans) throws InterruptedException {
        List<Callable<Night>> work = plans.stream()
                .<Callable<Night>>map(plan -> () -> gone(plan.every(interval)))
                .toList();
        Tally whole = new Tally();
        Map<String, Course> sound = new TreeMap<>();
        for (Night night : Crew.run(work)) {
            whole.add(night.tally());
            Trouble trouble = night.plan().mishap().trouble();
            for (int channel = 0; channel < night.courses().size(); channel++) {
                if (trouble == Trouble.NOTHING || (channel > 0 && !trouble.ofBoard)) {
                    sound.put(
                            night.plan().seed() + "/" + channel, night.courses().get(channel));
                }
            }
        }
        return new Sweep(interval, whole, sound);
    }

    private static Night gone(NightPlan plan) {
        Tally tally = new Tally();
        List<Course> courses = List.of(new Course(), new Course());
        new NightRun(plan, tally, line -> {}, (channel, millis, event) -> courses.get(channel)
                        .sees(millis, event))
                .run();
        return new Night(plan, tally, courses);
    }
}
