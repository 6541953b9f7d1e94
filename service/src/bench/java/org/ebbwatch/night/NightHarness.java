package org.ebbwatch.night;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.JudgeVersion;

/**
 * Runs nights and writes the table, or runs one night and tells all that happens in it. The command and the results are in
 * {@code docs/benchmarks/judging.md}.
 */
public final class NightHarness {
    private static final int TRIALS_MOST = 400;
    private static final Path CPU = Path.of("/proc/cpuinfo");

    private NightHarness() {}

    /**
     * {@code NIGHTS FIRST_SEED FILE MINUTES} for the table, with what was reached when the minutes are over; a trouble as
     * fifth argument for nights with that trouble only; a seed alone for one night.
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length == 1) {
            tell(Long.parseLong(arguments[0]));
            return;
        }
        int nights = Integer.parseInt(arguments[0]);
        long firstSeed = Long.parseLong(arguments[1]);
        Path document = Path.of(arguments[2]).toAbsolutePath();
        long began = System.nanoTime();
        String trials = arguments.length > 4
                ? ""
                : new TrialReport(Math.min(TRIALS_MOST, Math.max(20, nights / 5)), firstSeed).text();
        Optional<Trouble> only = arguments.length > 4 ? Optional.of(Trouble.valueOf(arguments[4])) : Optional.empty();
        long[] seeds = Nights.seeds(firstSeed, nights, only).toArray();
        Tally tally = Nights.run(seeds, Double.parseDouble(arguments[3]));
        int done = tally.nights();
        double minutes = (System.nanoTime() - began) / 60e9;
        String head = String.format(
                Locale.ROOT,
                """
                # How well the judge judges

                The night harness runs whole passages of simulated cells, from check-in to release, with everything that can go
                wrong, and holds what the judge says against what was really the case. How it does that, and what it cannot
                show, stands at the end.

                ```sh
                mvn -q -B -pl service -am -Pnight process-classes -Dnight.nights=%d -Dnight.firstSeed=%d -Dnight.document=docs/benchmarks/judging.md
                ```

                %s, judge version %d, %d nights of two cells each, seeds %d to %d, %.0f minutes on %d cores (%s), Java %s.
                Seeds below %d are for tuning, the table takes later ones.

                """,
                nights,
                firstSeed,
                LocalDate.now(ZoneOffset.UTC),
                JudgeVersion.NUMBER,
                done,
                firstSeed,
                seeds[done - 1],
                minutes,
                Runtime.getRuntime().availableProcessors(),
                cpu(),
                System.getProperty("java.version"),
                Nights.FIRST_TABLE_SEED);
        Files.createDirectories(document.getParent());
        Files.writeString(document, head + new NightReport(tally).text() + trials + Method.TEXT);
        System.out.printf(Locale.ROOT, "%d nights in %.1f min, written to %s%n", done, minutes, document);
    }

    private static String cpu() throws IOException {
        if (!Files.isReadable(CPU)) {
            return System.getProperty("os.arch");
        }
        try (BufferedReader lines = Files.newBufferedReader(CPU)) {
            return lines.lines()
                    .filter(line -> line.startsWith("model name"))
                    .map(line -> line.substring(line.indexOf(':') + 2))
                    .findFirst()
                    .orElse(System.getProperty("os.arch"));
        }
    }

    private static void tell(long seed) {
        NightPlan plan = NightPlan.draw(seed, Nights.troubleOf(seed));
        System.out.println(plan);
        Tally tally = new Tally();
        new NightRun(plan, tally, System.out::println).run();
        tally.blots.values().forEach(same -> same.examples().forEach(System.out::println));
    }
}
