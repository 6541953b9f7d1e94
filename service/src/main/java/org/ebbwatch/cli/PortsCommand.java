package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.ebbwatch.acquire.PortEntry;
import org.ebbwatch.acquire.PortList;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists serial ports. */
@Command(
        name = "ports",
        mixinStandardHelpOptions = true,
        description = "Lists the serial ports of this machine and the paths to use in a rack file.")
final class PortsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        List<PortEntry> ports = PortList.read();
        if (ports.isEmpty()) {
            out.println(
                    "No serial port is there. Plug the board in; on Linux you may have to be in the group dialout.");
        }
        for (PortEntry port : ports) {
            out.printf("%-40s %s%n", port.stablePath().isEmpty() ? port.path() : port.stablePath(), port.description());
        }
        out.flush();
        return 0;
    }
}
