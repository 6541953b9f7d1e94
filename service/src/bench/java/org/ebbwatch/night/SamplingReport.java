package org.ebbwatch.night;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.JudgeVersion;
import org.ebbwatch.night.SamplingHarness.Sweep;

/** Writes what boards of different intervals gave. */
final class SamplingReport {
    private static final long COMPARED_MILLIS = 1_000;

    private final List<Sweep> sweeps;
    private final StringBuilder out = new StringBuilder();

    SamplingReport(List<Sweep> sweeps) {
        this.sweeps = sweeps;
    }

    String text(int ofEach, long firstSeed) {
        line("# From 0.1 s to 60 s between scans");
        line("");
        line(
                "The rules are meant to hold by charge and time, not by counting samples. So the same nights, sound and troubled, are gone");
        line("through on boards that scan at one interval from beginning to end, and what comes out is compared.");
        line("");
        line("```sh");
        line(
                "mvn -q -B -pl service -am -Pnight process-classes -Dnight.main=org.ebbwatch.night.SamplingHarness"
                        + " -Dnight.arguments=\"%d %d docs/benchmarks/sampling.md\"",
                ofEach, firstSeed);
        line("```");
        line("");
        line(
                "%s, judge version %d, nights of each trouble: %d (at 0.1 s one), from seed %d on, two cells each. Nights are drawn",
                LocalDate.now(ZoneOffset.UTC), JudgeVersion.NUMBER, ofEach, firstSeed);
        line(
                "as for [judging.md](judging.md), but cells that drain for more than 4 h are left out, and the procedure is `careful` with a hold");
        line("of 1 h, a rest of 3 h and a watch of 3 h. A night ends after 36 h; the person makes no slips.");
        line("");
        passages();
        courses();
        findings();
        slow();
        return out.toString();
    }

    private void passages() {
        line("## Whole passages");
        line("");
        line(
                "| interval | passages | sound | sound released | not over | released, over 0.5 V a day later | false, ringing | locks broken |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- |");
        for (Sweep sweep : sweeps) {
            Tally tally = sweep.tally();
            int ringing = Arrays.stream(FindingKind.values())
                    .filter(kind -> kind.urgency() != Urgency.ADVISORY)
                    .mapToInt(kind -> tally.rows.get(kind).falseAlone + tally.rows.get(kind).falseBeside)
                    .sum();
            line(
                    "| %s | %d | %d | %d | %d | %d | %d | %d |",
                    seconds(sweep.intervalMillis()),
                    tally.passages,
                    tally.soundPassages,
                    tally.soundReleased,
                    tally.unfinished,
                    tally.wrongReleases,
                    ringing,
                    tally.locksBroken);
        }
        line("");
        line(
                "A rest of 3 h is too short for cells with material in poor contact: what comes back a day later is the price of this short");
        line("procedure, not of an interval. It is here to show that the interval does not change it.");
        line("");
    }

    private void courses() {
        line("## Times to each change of phase, against 1 s");
        line("");
        line(
                "Sound passages that got so far at both intervals: how much longer it took than on a board that scans every second, in");
        line(
                "seconds, median and the farthest either way. Noise is drawn anew at each interval, and a cell that stands near a limit may");
        line("pass it a little sooner or later for that alone.");
        line("");
        line("| interval | load-on to the end of the first hold | rest | watch |");
        line("| --- | --- | --- | --- |");
        Map<String, Course> compared = sweeps.stream()
                .filter(sweep -> sweep.intervalMillis() == COMPARED_MILLIS)
                .findFirst()
                .orElseThrow()
                .soundCourses();
        for (Sweep sweep : sweeps) {
            line(
                    "| %s | %s | %s | %s |",
                    seconds(sweep.intervalMillis()),
                    against(compared, sweep, Course::drainHours),
                    against(compared, sweep, Course::restHours),
                    against(compared, sweep, Course::watchHours));
        }
        line("");
    }

    private static String against(Map<String, Course> compared, Sweep sweep, ToDoubleFunction<Course> hours) {
        List<Double> differences = new ArrayList<>();
        sweep.soundCourses().forEach((passage, course) -> {
            Course other = compared.get(passage);
            double difference = other == null ? Double.NaN : hours.applyAsDouble(course) - hours.applyAsDouble(other);
            if (Double.isFinite(difference)) {
                differences.add(3600 * difference);
            }
        });
        return differences.isEmpty()
                ? "none got so far"
                : String.format(
                        Locale.ROOT,
                        "%+.0f (%+.0f to %+.0f), %d passages",
                        Figures.share(differences, 0.5),
                        Figures.share(differences, 0),
                        Figures.share(differences, 1),
                        differences.size());
    }

    private void findings() {
        line("## Finding by finding");
        line("");
        line(
                "Found / missed / false, and the median delay in seconds from the moment the truth bore it out (as in judging.md: late counts");
        line("as found).");
        line("");
        line(
                "| finding | %s |",
                sweeps.stream().map(sweep -> seconds(sweep.intervalMillis())).collect(Collectors.joining(" | ")));
        line("| --- |%s", " --- |".repeat(sweeps.size()));
        for (FindingKind kind : FindingKind.values()) {
            if (sweeps.stream().anyMatch(sweep -> isThere(sweep.tally().rows.get(kind)))) {
                line(
                        "| %s | %s |",
                        kind,
                        sweeps.stream()
                                .map(sweep -> cell(sweep.tally().rows.get(kind)))
                                .collect(Collectors.joining(" | ")));
            }
        }
        line("");
    }

    private static boolean isThere(Tally.Row row) {
        return row.events() + row.falseAlone + row.falseBeside > 0;
    }

    private static String cell(Tally.Row row) {
        String counts = row.found + " / " + row.missed + " / " + (row.falseAlone + row.falseBeside);
        return row.delays.isEmpty() ? counts : counts + ", " + Figures.two(Figures.share(row.delays, 0.5)) + " s";
    }

    private void slow() {
        line("## Slow boards");
        line("");
        line(
                "A stretch between two scans is a gap when it is longer than 5 s (`plausible.silentMillis`) and than three of the board's");
        line(
                "intervals. The judge learns the interval from the scans, up to 60 s, so that a slow board is watched; its silence is found the");
        line(
                "later. A change that happens between two scans is seen as one step: of a CUT_OFF at 60 s only what is left of it.");
        line(
                "What counts scans and not seconds (three in a row for SENSOR_FAULT and AMBIENT_HIGH, three within 10 s for a sudden rise, two");
        line("and 2 s for REVERSED, REBOUND and TIE_LOOSE) is the later the slower a board is.");
        line("");
    }

    private static String seconds(long millis) {
        return Figures.two(millis / 1000.0) + " s";
    }

    private void line(String format, Object... arguments) {
        out.append(arguments.length == 0 ? format : String.format(Locale.ROOT, format, arguments))
                .append('\n');
    }
}
