package org.ebbwatch.night;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.LongStream;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * Whether holding a cell on its load below the drain limit is sooner done than going straight off: the same nights of sound
 * cells under holds of different length. The command and the results are in {@code docs/benchmarks/holding.md}.
 */
public final class HoldingHarness {
    private HoldingHarness() {}

    /** {@code NIGHTS FIRST_SEED FILE}. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        int nights = Integer.parseInt(arguments[0]);
        long firstSeed = Long.parseLong(arguments[1]);
        Path document = Path.of(arguments[2]).toAbsolutePath();
        List<Long> seeds = LongStream.iterate(firstSeed, seed -> seed + 1)
                .filter(HoldingHarness::isCareful)
                .limit(nights)
                .boxed()
                .toList();
        Files.createDirectories(document.getParent());
        Files.writeString(document, new HoldingReport().text(seeds, firstSeed));
    }

    private static boolean isCareful(long seed) {
        return NightPlan.draw(seed, Trouble.NOTHING).procedure().equals(Procedure.careful());
    }
}
