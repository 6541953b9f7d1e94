package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.ebbwatch.archive.Export;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes everything the records hold in open formats. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {
            "Writes everything as a Frictionless Data Package: the tables as CSV and the bundle of every passage.",
            "The service that keeps the records must be stopped. See docs/archive.md."
        })
final class ExportCommand implements Callable<Integer> {
    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "the folder of the records")
    private Path storage;

    @Option(names = "--to", paramLabel = "FOLDER", required = true, description = "a new folder")
    private Path folder;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        if (!Files.exists(storage.resolve(BundleCommand.DATABASE))) {
            throw new Refusal("there are no records in " + storage);
        }
        PrintWriter out = spec.commandLine().getOut();
        try (StoredRack rack = RecordPlace.of(storage).open()) {
            var bundles = new BundleWriter(Origin.current(), ServiceHost.signingKey(storage));
            int passages = Export.write(rack, bundles, folder, Instant.now().toString());
            out.println(passages + " passage(s) in " + folder.resolve("datapackage.json"));
            out.flush();
            return 0;
        } catch (IOException | StorageException e) {
            throw new Refusal("not everything was exported: " + e.getMessage());
        }
    }
}
