package org.ebbwatch.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.rack.ChannelLine;
import org.ebbwatch.rack.RackCheck;
import org.ebbwatch.rack.RackFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads every channel of a rack once. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Reads every channel of every board of a rack file once and says what looks wrong. Closes no load, keeps no record,",
            "and applies no calibration. A running service has the ports: stop it first, or look at its page.",
            "Exit code 0: nothing is the matter; 1: something is; 3: the rack file is faulty."
        })
final class CheckCommand implements Callable<Integer> {
    private static final String ROW = "%-14s %-14s %-18s %6s  %-4s  %s%n";

    @Parameters(paramLabel = "RACK_FILE", description = "boards, their ports, and the cells on their channels")
    private Path file;

    @Option(
            names = "--seconds",
            paramLabel = "SECONDS",
            defaultValue = "15",
            description = "how long to wait for boards that are not heard (${DEFAULT-VALUE})")
    private int seconds;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal, InterruptedException {
        RackFile rackFile = RackFiles.read(file);
        List<ChannelLine> lines =
                new RackCheck(rackFile, BoardPorts.of(rackFile), new SystemHostClock()).read(1_000L * seconds);
        PrintWriter out = spec.commandLine().getOut();
        print(lines, out);
        return lines.stream().anyMatch(ChannelLine::isTrouble) ? 1 : 0;
    }

    static void print(List<ChannelLine> lines, PrintWriter out) {
        out.printf(ROW, "board, channel", "tag or role", "volts +- U (k=2)", "degC", "load", "state");
        for (ChannelLine line : lines) {
            out.printf(ROW, line.about(), line.tag(), line.volts(), line.celsius(), line.load(), line.state());
            if (line.isTrouble()) {
                out.println("               to do: " + line.toDo());
            }
        }
        long troubles = lines.stream().filter(ChannelLine::isTrouble).count();
        out.println(
                troubles == 0
                        ? "Nothing looks wrong. That is no promise: damage, swelling and a lead on the wrong cell are not seen."
                        : troubles + " to see to. Cells can burn: touch none that is warm, leaking or swelling.");
        out.flush();
    }
}
