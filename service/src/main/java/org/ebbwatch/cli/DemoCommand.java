package org.ebbwatch.cli;

import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.demo.DemoRun;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.HttpEntry;
import org.ebbwatch.rack.RunningRack;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lives an invented week at a simulated rack. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Lives an invented week at a simulated rack of sixteen cells, at high speed, and ends with a table.",
            "The boards are simulated and speak through real pseudo-terminals; all else is the service itself."
        })
final class DemoCommand implements Callable<Integer> {
    @Option(
            names = "--speed",
            paramLabel = "N",
            defaultValue = "7200",
            description = "event seconds per second, 60 to 20000 (default: ${DEFAULT-VALUE})")
    private int speed;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "7",
            description = "decides noise and spread (default: ${DEFAULT-VALUE})")
    private long seed;

    @Option(
            names = "--page-port",
            paramLabel = "PORT",
            defaultValue = "8471",
            description = "where the page is shown; 0: any free one (default: ${DEFAULT-VALUE})")
    private int pagePort;

    @Option(names = "--storage", paramLabel = "DIR", description = "where the records go (default: a new folder)")
    private Path storage;

    @Override
    public Integer call() throws Exception {
        if (speed < 60 || speed > 20_000) {
            throw new Refusal("--speed is " + speed + ", allowed is 60 to 20000");
        }
        if (pagePort != 0) {
            ServiceHost.requireFree("127.0.0.1", pagePort);
        }
        Path records = storage == null ? Files.createTempDirectory("ebbwatch-demo-") : storage;
        var out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        out.println("An invented workshop's box of sixteen old cells, simulated at " + speed + " times real time.");
        out.println("No real cell is in danger here. Real ones can burn: see docs/safety.md.");
        out.println();
        out.println("  records  " + records);
        var page = new AtomicReference<EmbeddedServer>();
        boolean asScripted;
        try {
            asScripted = new DemoRun(out, CommandLine.Help.Ansi.AUTO.enabled())
                    .run(speed, seed, boards -> rack(boards, records, page, out));
        } finally {
            if (page.get() != null) {
                page.get().getApplicationContext().close();
            }
        }
        Path bundles = records.resolve("bundles");
        boolean allWritten = bundles(records, bundles, out);
        out.println();
        out.println("Readings and journal of every cell: " + records);
        out.println("A sealed bundle of every passage, for ebbwatch verify: " + bundles);
        return asScripted && allWritten ? 0 : 1;
    }

    private static boolean bundles(Path records, Path bundles, PrintStream out) throws IOException, Refusal {
        out.println();
        try (StoredRack rack = RecordPlace.of(records).open()) {
            return BundleCommand.write(
                    rack,
                    rack.cards(),
                    ServiceHost.signingKey(records),
                    bundles,
                    new PrintWriter(out, true, StandardCharsets.UTF_8));
        }
    }

    private RunningRack rack(
            List<RunningRack.BoardPort> boards, Path records, AtomicReference<EmbeddedServer> page, PrintStream out) {
        try {
            NightHours night = NightHours.usual(ZoneId.systemDefault());
            RunningRack rack = ServiceHost.rack(boards, RecordPlace.of(records), night, List.of(), Optional.empty());
            TokenFile tokens = ServiceHost.tokens(records, new PrintWriter(out, true, StandardCharsets.UTF_8));
            var http = new HttpEntry("127.0.0.1", pagePort == 0 ? -1 : pagePort);
            page.set(ServiceHost.page(rack, tokens, night, records, http));
            out.println("  page     " + page.get().getURL());
            return rack;
        } catch (Refusal e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }
}
