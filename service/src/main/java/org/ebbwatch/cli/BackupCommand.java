package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.ebbwatch.archive.Backup;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Backs up records, of a service that runs or one that is stopped. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = {
            "Backs up all records: of a running service (--service, with the token in EBBWATCH_TOKEN), which writes the file beside its",
            "records and goes on watching,",
            "or of a stopped one (--storage with --to). Keys and tokens are no part of a backup. See docs/archive.md."
        })
final class BackupCommand implements Callable<Integer> {
    @ArgGroup(multiplicity = "1", exclusive = true)
    private Source source;

    @Spec
    private CommandSpec spec;

    private static final class Source {
        @ArgGroup(exclusive = false)
        private Stopped stopped;

        @ArgGroup(exclusive = false)
        private Running running;
    }

    private static final class Stopped {
        @Option(names = "--storage", paramLabel = "DIR", required = true, description = "the folder of the records")
        private Path storage;

        @Option(names = "--to", paramLabel = "FILE", required = true, description = "the backup; must not be there yet")
        private Path file;
    }

    private static final class Running {
        @Option(names = "--service", paramLabel = "URL", required = true, description = "where the service's page is")
        private URI service;
    }

    @Override
    public Integer call() throws Refusal {
        PrintWriter out = spec.commandLine().getOut();
        if (source.running != null) {
            out.println(BackupService.ask(source.running.service, ServiceCall.token(System.getenv())));
        } else {
            write(source.stopped.storage, source.stopped.file);
            out.println(source.stopped.file);
        }
        out.flush();
        return 0;
    }

    private static void write(Path storage, Path file) throws Refusal {
        if (!Files.exists(storage.resolve(BundleCommand.DATABASE))) {
            throw new Refusal("there are no records in " + storage);
        }
        try (StoredRack rack = RecordPlace.of(storage).open()) {
            new Backup(rack.backupSource()).write(file, Instant.now().toString());
        } catch (IOException | StorageException e) {
            throw new Refusal("no backup was made: " + e.getMessage());
        }
    }
}
