package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.handover.HandOver;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the papers that go with a batch of cells. */
@Command(
        name = "hand-over",
        mixinStandardHelpOptions = true,
        description = {
            "Writes a covering sheet (hand-over.pdf), a table (hand-over.csv) and labels (labels.pdf) of the cells whose bundles are named.",
            "Bundles are written by `ebbwatch bundle`; nothing but them is needed. See docs/hand-over.md."
        })
final class HandOverCommand implements Callable<Integer> {
    @Parameters(paramLabel = "BUNDLE", arity = "1..*", description = "bundles of the cells")
    private List<Path> bundles;

    @Option(names = "--to", paramLabel = "FOLDER", required = true, description = "where the papers go")
    private Path folder;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        PrintWriter out = spec.commandLine().getOut();
        try {
            HandOver.write(bundles, folder).forEach(out::println);
            out.flush();
            return 0;
        } catch (IOException | IllegalArgumentException e) {
            throw new Refusal("no hand-over was written: " + e.getMessage());
        }
    }
}
