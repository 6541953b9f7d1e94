package org.ebbwatch.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.ebbwatch.archive.Retention;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says for how long records are kept at least, and lists what may be deleted. */
@Command(
        name = "retention",
        mixinStandardHelpOptions = true,
        description = {
            "Shows, or sets, for how many days the records of a passage that is over must be kept, and lists those past it.",
            "It deletes nothing: `ebbwatch delete` does, and refuses what must be kept. The service must be stopped."
        })
final class RetentionCommand implements Callable<Integer> {
    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "the folder of the records")
    private Path storage;

    @Option(names = "--days", paramLabel = "N", description = "keep for so long from now on")
    private Integer days;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        if (!Files.exists(storage.resolve(BundleCommand.DATABASE))) {
            throw new Refusal("there are no records in " + storage);
        }
        try (StoredRack rack = RecordPlace.of(storage).open()) {
            var retention = new Retention(rack.database());
            if (days != null) {
                retention.keepFor(days);
            }
            show(retention, spec.commandLine().getOut());
            return 0;
        } catch (IllegalArgumentException | StorageException e) {
            throw new Refusal(e.getMessage());
        }
    }

    private static void show(Retention retention, PrintWriter out) {
        OptionalInt kept = retention.days();
        if (kept.isEmpty()) {
            out.println("Nobody said for how long records must be kept.");
        } else {
            out.println("Records are kept for " + kept.getAsInt() + " days. Past that:");
            retention.ended().stream()
                    .filter(ended -> ended.keptUntilMillis(kept.getAsInt()) <= System.currentTimeMillis())
                    .forEach(ended -> out.println(
                            "  " + ended.passage() + "  " + date(ended.endedWallMillis()) + "  " + ended.tag()));
        }
        out.flush();
    }

    private static String date(long wallMillis) {
        return Instant.ofEpochMilli(wallMillis)
                .atOffset(ZoneOffset.UTC)
                .toLocalDate()
                .toString();
    }
}
