package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.TcpPort;

/**
 * One way a line can be bad.
 *
 * @param allowed what may be found because of it, and nothing else
 */
record LineCase(String name, int cells, Harm harm, List<Fault> faults, Set<String> allowed) {
    private static final String BOARD = "left";
    private static final int LOOK_MILLIS = 20;
    private static final int FEW = 8;
    private static final int MANY = 61;

    /** Every way, with chance of its own. */
    static List<LineCase> all(long seed, long rebootEveryMillis) {
        var random = new Random(seed);
        Set<String> silent = Set.of("SILENT");
        Harm all = Harm.byteErrors(0.001, random)
                .then(Harm.truncated(0.05, random))
                .then(Harm.duplicated(0.1, random))
                .then(Harm.reordered(0.05, random));
        return List.of(
                new LineCase("a line that delivers", FEW, Harm.NONE, List.of(), Set.of()),
                new LineCase("1 % of bytes wrong, 11 channels", FEW, Harm.byteErrors(0.01, random), List.of(), silent),
                new LineCase("1 % of bytes wrong, 64 channels", MANY, Harm.byteErrors(0.01, random), List.of(), silent),
                new LineCase("bursts of 200 bytes", FEW, Harm.bursts(0.1, 200, random), List.of(), silent),
                new LineCase("a fifth of frames cut", FEW, Harm.truncated(0.2, random), List.of(), silent),
                new LineCase("a fifth of frames twice or more", FEW, Harm.duplicated(0.2, random), List.of(), Set.of()),
                new LineCase("a tenth of frames late", FEW, Harm.reordered(0.1, random), List.of(), silent),
                new LineCase("all of it", FEW, all, List.of(), silent),
                new LineCase(
                        "a board that starts again every " + rebootEveryMillis / 1000 + " s",
                        FEW,
                        Harm.NONE,
                        reboots(rebootEveryMillis),
                        silent));
    }

    private static List<Fault> reboots(long everyMillis) {
        List<Fault> faults = new ArrayList<>();
        for (long millis = everyMillis; millis < 3_600_000; millis += everyMillis) {
            faults.add(Fault.onBoard(FaultKind.REBOOT, Trigger.at(millis)).lasting(everyMillis / 10));
        }
        return faults;
    }

    /** What came of it. */
    record Result(LineCase line, long sent, long kept, LineRack.Kept found, Set<String> alarms, Trouble trouble) {}

    /** Runs it at 20 scans a second for so long; the line gets bad once the board has said who it is. */
    Result run(Path folder, long millis) throws IOException, InterruptedException {
        var trouble = new Trouble();
        try (LineRack rack = new LineRack(folder, cells, 50)) {
            rack.board(BOARD, "SIM-LINE", TcpPort.listen(0), Harm.NONE, faults).start();
            while (rack.view(BOARD).link() != LinkState.CONNECTED) {
                Thread.sleep(LOOK_MILLIS);
            }
            rack.harm(BOARD, harm);
            Thread.sleep(millis);
            Set<String> alarms = rack.alarms();
            LineRack.Kept found = rack.stop(trouble);
            found.findings().forEach(kind -> trouble.unless(allowed.contains(kind), name + ": found " + kind));
            return new Result(
                    this,
                    rack.sent(BOARD).size(),
                    found.scans().get(BOARD).scans().size(),
                    found,
                    alarms,
                    trouble);
        }
    }
}
