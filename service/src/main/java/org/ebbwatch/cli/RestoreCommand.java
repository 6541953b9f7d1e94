package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ebbwatch.archive.Restore;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Puts a backup's records into a new folder. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description = {
            "Puts the records of a backup into a folder that is missing or empty, and opens them once to see that they can be read.",
            "A new signing key and a new operator's token are made when a service starts there, unless yours are put back."
        })
final class RestoreCommand implements Callable<Integer> {
    @Option(names = "--from", paramLabel = "FILE", required = true, description = "the backup")
    private Path backup;

    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "the folder for the records")
    private Path storage;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        String made;
        try {
            made = Restore.into(backup, storage);
        } catch (IOException e) {
            throw new Refusal("nothing was restored: " + e.getMessage());
        }
        PrintWriter out = spec.commandLine().getOut();
        try (StoredRack rack = RecordPlace.of(storage).open()) {
            out.println(rack.cards().size() + " passage(s) as of " + made + " in " + storage);
        }
        out.flush();
        return 0;
    }
}
