package org.ebbwatch.cli;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.ebbwatch.archive.Deletion;
import org.ebbwatch.archive.Deletion.Deleted;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Deletes the records of a passage and writes down that it did. */
@Command(
        name = "delete",
        mixinStandardHelpOptions = true,
        description = {
            "Deletes the records of one passage that is over, for good. What was deleted, by whom and why is written down and stays.",
            "Nothing else ever deletes a passage. The service must be stopped. Write the bundle first. See docs/archive.md."
        })
final class DeleteCommand implements Callable<Integer> {
    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "the folder of the records")
    private Path storage;

    @Option(names = "--passage", paramLabel = "ID", required = true, description = "the passage")
    private UUID passage;

    @Option(names = "--by", paramLabel = "NAME", required = true, description = "who asks for it")
    private String by;

    @Option(names = "--reason", paramLabel = "TEXT", required = true, description = "why")
    private String reason;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        if (!Files.exists(storage.resolve(BundleCommand.DATABASE))) {
            throw new Refusal("there are no records in " + storage);
        }
        PrintWriter out = spec.commandLine().getOut();
        try (StoredRack rack = RecordPlace.of(storage).open()) {
            Deleted deleted = new Deletion(rack)
                    .delete(UuidCreator.getTimeOrderedEpoch(), passage, by, reason, System.currentTimeMillis());
            out.println(
                    "Deleted " + deleted.tag() + ", passage " + passage + ": " + deleted.journalRows() + " entries, "
                            + deleted.segments() + " segments of readings. Written down as " + deleted.id() + ".");
            out.flush();
            return 0;
        } catch (IllegalArgumentException | StorageException e) {
            throw new Refusal("nothing was deleted: " + e.getMessage());
        }
    }
}
