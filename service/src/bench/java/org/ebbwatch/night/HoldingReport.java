package org.ebbwatch.night;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.ebbwatch.judge.JudgeVersion;
import org.ebbwatch.judge.procedure.Procedure;

/** Writes what holds of different length gave. */
final class HoldingReport {
    private static final List<Duration> HOLDS = List.of(
            Duration.ofMinutes(1),
            Duration.ofHours(1),
            Duration.ofHours(4),
            Duration.ofHours(12),
            Duration.ofHours(24));
    private static final Duration ONE_MINUTE = HOLDS.get(0);
    private static final Duration CAREFUL =
            Duration.ofMillis(Procedure.careful().drain().holdMillis());
    private static final double WEEK_HOURS = 7 * 24;

    private final StringBuilder out = new StringBuilder();

    String text(List<Long> seeds, long firstSeed) throws InterruptedException {
        line("# Holding below the drain limit, or going straight off");
        line("");
        line(
                "A cell stays on its load until V + U has been below 0.10 V for 12 h (`drain.holdMillis` of `careful`), and after each");
        line(
                "return twice as long. Does that pay, or is it sooner done to take the load off at 0.10 V and let the rest decide?");
        line("");
        line("```sh");
        line(
                "mvn -q -B -pl service -am -Pnight process-classes -Dnight.main=org.ebbwatch.night.HoldingHarness"
                        + " -Dnight.arguments=\"%d %d docs/benchmarks/holding.md\"",
                seeds.size(), firstSeed);
        line("```");
        line("");
        line(
                "%s, judge version %d, %d nights of two sound cells each from seed %d on, the same under every hold. Everything but the",
                LocalDate.now(ZoneOffset.UTC), JudgeVersion.NUMBER, seeds.size(), firstSeed);
        line(
                "hold is that of `careful`, and how nights are drawn is told in [judging.md](judging.md); the person makes no slips and");
        line(
                "drains a held cell again for as long as the judge allows it. A passage ends with its release, or after 15 days.");
        line("");
        line(
                "Hours are from the first load-on to a rest that was passed. Released: within so many days of load-on. The answer stands in the");
        line("last line of each section.");
        population(
                "Cells with material in poor contact",
                "Most old cells have some: it empties over hours to days.",
                new HoldingTrial(seeds, UnaryOperator.identity()));
        population(
                "The same cells with a tenth of it",
                "Nearly all of the cell follows its terminals within an hour or so.",
                new HoldingTrial(seeds, CellPlan::quick));
        line("");
        line("## What it shows, and what it cannot");
        line("");
        line(
                "- Hours to a passed rest and returns are two prices. A return is a switch of the board's or an errand of a person's, and");
        line("  each one begins a rest anew; hours on the load are only hours. Read the columns together.");
        line(
                "- Each return doubles the hold, with one minute too: after eight returns it holds for four hours. Going straight off each");
        line("  time is only in the tables without a judge.");
        line(
                "- Half of the cells with slow material are drawn so that they rest within 0.2 V of the limit after a hold of 12 h, the");
        line(
                "  others so that they rest at 0.03 to 1.5 V: cells for which the length of the hold matters are more frequent here than in");
        line("  a box of old cells.");
        line(
                "- A cell that went straight off stood just below 0.10 V on its load. After the bond it must stand above that to prove that it");
        line(
                "  is there, and one that was emptied further by the bond may not: LEAD_OPEN after 6 h, and all over again.");
        line("- A cell so empty that nothing comes back is unproven and not released, under any hold: see");
        line(
                "  [decisions/0008](../decisions/0008-truly-empty-is-unproven-not-wrong.md). The person here then drains it again, which");
        line("  does not help.");
        line(
                "- A rest that fails is often noticed early (REBOUND, or its forecast), so that a return costs less than a whole rest.");
        line(
                "- The person's nights and delays count: a load that hands switch waits until morning, whatever the hold.");
        line("- The cells are a model: what long holds near 0 V do to a cell's copper is not in it.");
        return out.toString();
    }

    private void population(String title, String what, HoldingTrial trial) throws InterruptedException {
        line("");
        line("## %s", title);
        line("");
        line("%s", what);
        line("");
        line(
                "| first hold | passages | hours to a passed rest, median / p90 | returns, mean / most | a person had to decide | within 7 days | within 14 days |");
        line("| --- | --- | --- | --- | --- | --- | --- |");
        List<Course> straight = List.of();
        List<Course> held = List.of();
        for (Duration hold : HOLDS) {
            List<Course> courses = trial.courses(hold);
            row(hold, courses);
            straight = hold.equals(ONE_MINUTE) ? courses : straight;
            held = hold.equals(CAREFUL) ? courses : held;
        }
        compare(straight, held);
        bare(trial);
    }

    private void compare(List<Course> straight, List<Course> held) {
        int sooner = 0;
        int later = 0;
        for (int i = 0; i < held.size(); i++) {
            sooner += held.get(i).hoursToRested() < straight.get(i).hoursToRested() ? 1 : 0;
            later += held.get(i).hoursToRested() > straight.get(i).hoursToRested() ? 1 : 0;
        }
        line("");
        line(
                "Cell by cell, 12 h is sooner done than one minute with %d, and later with %d of %d.",
                sooner, later, held.size());
        line("");
    }

    private void bare(HoldingTrial trial) throws InterruptedException {
        line("By the cell's voltage alone: no judge, forecast, noise, nights or person, back on the load at 0.50 V.");
        line("");
        line(
                "| hold | passages | hours to a passed rest, median / p90 | returns, mean / most | passed within 14 days |");
        line("| --- | --- | --- | --- | --- |");
        List<BareRounds> straight = bare("none, straight off each time", trial.bare(Duration.ZERO, false));
        List<BareRounds> held = List.of();
        for (Duration hold : HOLDS) {
            List<BareRounds> rounds = bare(written(hold) + ", then doubled", trial.bare(hold, true));
            held = hold.equals(CAREFUL) ? rounds : held;
        }
        line("");
        line(
                "**In short**, by the cell's voltage alone: 12 h, then doubled, is %s in the median (%s h against %s) and %s at p90"
                        + " (%s h against %s) than going straight off, and returns %.1f times instead of %.1f.",
                sooner(held, straight, 0.5),
                hours(held, 0.5),
                hours(straight, 0.5),
                sooner(held, straight, 0.9),
                hours(held, 0.9),
                hours(straight, 0.9),
                meanReturns(held),
                meanReturns(straight));
    }

    private static String sooner(List<BareRounds> held, List<BareRounds> straight, double share) {
        return quantile(held, share) < quantile(straight, share) ? "sooner" : "no sooner";
    }

    private static String hours(List<BareRounds> rounds, double share) {
        return Figures.two(quantile(rounds, share));
    }

    private static double quantile(List<BareRounds> rounds, double share) {
        return Figures.share(rounds.stream().map(BareRounds::hours).toList(), share);
    }

    private static double meanReturns(List<BareRounds> rounds) {
        return rounds.stream().mapToInt(BareRounds::returns).average().orElse(0);
    }

    private List<BareRounds> bare(String name, List<BareRounds> all) {
        line(
                "| %s | %d | %s / %s | %.1f / %d | %.0f %% |",
                name,
                all.size(),
                hours(all, 0.5),
                hours(all, 0.9),
                meanReturns(all),
                all.stream().mapToInt(BareRounds::returns).max().orElse(0),
                100.0
                        * all.stream()
                                .filter(each -> each.hours() <= 2 * WEEK_HOURS)
                                .count()
                        / all.size());
        return all;
    }

    private static String written(Duration hold) {
        return hold.toMinutes() < 60 ? hold.toMinutes() + " min" : hold.toHours() + " h";
    }

    private void row(Duration hold, List<Course> courses) {
        List<Double> rested = courses.stream().map(Course::hoursToRested).toList();
        line(
                "| %s | %d | %s / %s | %.1f / %d | %d times | %s | %s |",
                written(hold),
                courses.size(),
                Figures.two(Figures.share(rested, 0.5)),
                Figures.two(Figures.share(rested, 0.9)),
                courses.stream().mapToInt(Course::returns).average().orElse(0),
                courses.stream().mapToInt(Course::returns).max().orElse(0),
                courses.stream().mapToInt(Course::timesHeld).sum(),
                released(courses, WEEK_HOURS),
                released(courses, 2 * WEEK_HOURS));
    }

    private static String released(List<Course> courses, double hours) {
        long within = courses.stream()
                .filter(course -> course.hoursToReleased() <= hours)
                .count();
        return String.format(Locale.ROOT, "%.0f %%", 100.0 * within / courses.size());
    }

    private void line(String format, Object... arguments) {
        out.append(arguments.length == 0 ? format : String.format(Locale.ROOT, format, arguments))
                .append('\n');
    }
}
