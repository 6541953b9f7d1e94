package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.judge.Outcome.Cleared;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.replay.Recording;
import org.ebbwatch.replay.Replay;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges a recording. */
@Command(
        name = "replay",
        mixinStandardHelpOptions = true,
        description = {
            "Judges a recording by a procedure: comma-separated, with a header row and the columns seconds and volts,",
            "and as far as there are any amperes (discharge positive), celsius and ambient. An empty field was not read.",
            "The load counts as put on and taken off by hand whenever the current begins and ends."
        })
final class ReplayCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "the recording")
    private Path file;

    @Option(names = "--ampere-hours", paramLabel = "N", required = true, description = "rated capacity of the cell")
    private double ampereHours;

    @Option(
            names = "--ohms",
            paramLabel = "N",
            description = "the load; by default the median of volts over amperes while current flows")
    private double ohms = Double.NaN;

    @Option(names = "--lfp", description = "the cell is iron phosphate, not layered oxide")
    private boolean lfp;

    @Option(
            names = "--procedure",
            paramLabel = "NAME",
            defaultValue = "careful",
            description = "careful, strict, lfp, large or damaged (default: ${DEFAULT-VALUE})")
    private String procedure;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        Recording recording = read();
        double load = Double.isNaN(ohms) ? Replay.suggestedOhms(recording) : ohms;
        if (!(load > 0)) {
            throw new Refusal("no current flows in " + file + ": say with --ohms through which load it was drained");
        }
        var card = new CellCard("recording", chemistry(), ampereHours, load, false, false);
        Replay replay = Replay.judge(recording, card, named());
        PrintWriter out = spec.commandLine().getOut();
        for (Replay.Told told : replay.told()) {
            String line = line(told.event());
            if (!line.isEmpty()) {
                out.printf("%10.1f s  %s%n", told.seconds(), line);
            }
        }
        out.printf(
                "%n%d readings, %.3f Ah and %.3f Wh taken out, ends in %s: %s%n",
                recording.rows().size(),
                replay.judge().ampereHours(),
                replay.judge().wattHours(),
                replay.judge().phase(),
                replay.judge().reason());
        out.flush();
        return 0;
    }

    private Chemistry chemistry() {
        return lfp ? Chemistry.LFP : Chemistry.LAYERED_OXIDE;
    }

    private Procedure named() throws Refusal {
        BuiltIn named = BuiltIn.ofKey(procedure)
                .orElseThrow(() -> new Refusal(
                        "no procedure is called " + procedure + "; there are " + String.join(", ", BuiltIn.keys())));
        Optional<String> refusal = named.refusal(chemistry(), ampereHours);
        if (refusal.isPresent()) {
            throw new Refusal(refusal.get());
        }
        return named.procedure();
    }

    private Recording read() throws Refusal {
        if (!(ampereHours > 0)) {
            throw new Refusal("--ampere-hours must be above 0");
        }
        try {
            return Recording.parse(Files.readString(file));
        } catch (Recording.Unreadable e) {
            throw new Refusal(file + ", " + e.getMessage());
        } catch (NoSuchFileException e) {
            throw new Refusal("there is no file " + file);
        } catch (IOException e) {
            throw new Refusal("cannot read " + file + ": " + e.getMessage());
        }
    }

    private static String line(Event event) {
        if (event instanceof PhaseChanged changed) {
            return String.format("%-13s %s", changed.to(), changed.reason());
        }
        if (event instanceof Raised raised) {
            return String.format(
                    "%-13s %s", raised.finding().kind(), raised.finding().line());
        }
        return event instanceof Cleared cleared ? String.format("%-13s cleared", cleared.kind()) : "";
    }
}
