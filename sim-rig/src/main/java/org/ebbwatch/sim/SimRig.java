package org.ebbwatch.sim;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.SimPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.Scenario;
import org.ebbwatch.sim.scenario.ScenarioException;

/** Runs every board of a scenario until it is stopped, and prints where each one listens. */
public final class SimRig {
    /** Exit code when the command line or the scenario is refused. */
    static final int REFUSED = 2;
    /** Exit code when a port cannot be opened or a board's port failed. */
    static final int FAILED = 1;

    private static final String USAGE =
            """
            Usage: java -jar sim-rig.jar SCENARIO [--port pty|tcp:PORT] [--speed N] [--check]
              SCENARIO          a YAML file; docs/sim-rig.md says what may stand in it
              --port pty        one pseudo-terminal per board (usual)
              --port tcp:PORT   boards listen on loopback, the first on PORT, the others on the next ones
              --speed N         event seconds per host second, 1 to 65535, instead of the scenario's
              --check           read the scenario and stop
            """;

    private SimRig() {}

    /** See {@link #USAGE}; exit codes 0, 1 and 2. */
    public static void main(String[] arguments) {
        int code = run(arguments, System.out, System.err);
        if (code != 0) {
            System.exit(code);
        }
    }

    static int run(String[] arguments, PrintStream out, PrintStream err) {
        try {
            Arguments given = Arguments.parse(arguments);
            if (given.help()) {
                out.print(USAGE);
                return 0;
            }
            Scenario read = Scenario.parse(text(given.scenario()), given.scenario());
            Scenario scenario =
                    given.speed().isPresent() ? read.atSpeed(given.speed().get()) : read;
            if (given.check()) {
                out.println(given.scenario() + ": good, " + scenario.boards().size() + " board(s)");
                return 0;
            }
            return runBoards(scenario, given, out, err);
        } catch (Arguments.Refused e) {
            err.println(e.getMessage());
            err.print(USAGE);
            return REFUSED;
        } catch (ScenarioException e) {
            err.println(e.getMessage());
            return REFUSED;
        } catch (IOException e) {
            err.println(e.getMessage());
            return FAILED;
        }
    }

    private static String text(String file) throws Arguments.Refused {
        try {
            return Files.readString(Path.of(file));
        } catch (NoSuchFileException e) {
            throw new Arguments.Refused("cannot read the scenario " + file + ": there is no such file");
        } catch (IOException | IllegalArgumentException e) {
            throw new Arguments.Refused("cannot read the scenario " + file + ": " + e);
        }
    }

    private static int runBoards(Scenario scenario, Arguments given, PrintStream out, PrintStream err)
            throws IOException, Arguments.Refused {
        requirePorts(scenario, given);
        List<SimRunner> runners = new ArrayList<>();
        try {
            for (int i = 0; i < scenario.boards().size(); i++) {
                SimPort port = given.tcpPort().isPresent()
                        ? TcpPort.listen(
                                given.tcpPort().get() == 0 ? 0 : given.tcpPort().get() + i)
                        : PtyPort.open();
                runners.add(new SimRunner(SimBoard.of(scenario, i), port, scenario.speed()));
            }
            for (int i = 0; i < runners.size(); i++) {
                SimRunner runner = runners.get(i).start();
                out.println("board " + scenario.boards().get(i).serialNumber() + " at " + runner.address() + ", speed "
                        + scenario.speed());
            }
            out.flush();
            return waitFor(runners, err);
        } finally {
            for (SimRunner runner : runners) {
                runner.close();
            }
        }
    }

    private static void requirePorts(Scenario scenario, Arguments given) throws Arguments.Refused {
        int last = given.tcpPort().orElse(0) + scenario.boards().size() - 1;
        if (last > 65_535) {
            throw new Arguments.Refused("--port: the last board would listen on " + last + ", allowed is up to 65535");
        }
    }

    private static int waitFor(List<SimRunner> runners, PrintStream err) {
        int code = 0;
        try {
            for (SimRunner runner : runners) {
                runner.join();
                Optional<Exception> failure = runner.failure();
                if (failure.isPresent()) {
                    err.println(runner.address() + ": " + failure.get().getMessage());
                    code = FAILED;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return code;
    }
}
