package org.ebbwatch.cli;

import io.micronaut.runtime.server.EmbeddedServer;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.ebbwatch.life.LifeAgent;
import org.ebbwatch.morning.MorningHour;
import org.ebbwatch.rack.CellEntry;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.rack.RunningRack;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Watches a rack until it is stopped. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = "Watches the rack that a rack file describes until it is stopped. See docs/rack-file.md.")
final class ServeCommand implements Callable<Integer> {
    private static final long LINK_LOOK_MILLIS = 1000;

    @Parameters(paramLabel = "RACK_FILE", description = "boards, their ports, and the cells on their channels")
    private Path file;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal, InterruptedException {
        RackFile rackFile = RackFiles.read(file);
        ServiceHost.requireFree(rackFile.http().address(), rackFile.http().port());
        PrintWriter out = spec.commandLine().getOut();
        NightHours night = AlarmWays.night(rackFile.alarms());
        var ways = new AlarmWays(System.getenv(), new SystemHostClock());
        RecordPlace place = RecordPlace.of(rackFile, System.getenv());
        RunningRack rack = ServiceHost.rack(
                BoardPorts.of(rackFile),
                place,
                night,
                ways.of(rackFile.alarms()),
                rackFile.alarms().publicAddress());
        rackFile.morningReport()
                .ifPresent(it -> rack.reportMornings(new MorningHour(it.at(), night.zone()), it.outlets()));
        rackFile.wirings().forEach(rack::wire);
        LifeAgent life = LifeWays.agent(rack, rackFile.signOfLife(), System.getenv());
        TokenFile tokens = ServiceHost.tokens(rackFile.storage(), out);
        EmbeddedServer page = ServiceHost.page(rack, tokens, night, rackFile.storage(), rackFile.http());
        rackFile.cells().forEach(cell -> expect(rack, cell, out));
        rackFile.cells().forEach(cell -> advise(cell, out));
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(rack, ways, life), "stop"));
        rack.start();
        ways.begin(rack);
        life.start();
        out.println(
                "Watching " + rackFile.boards().size() + " board(s). Page: " + page.getURL() + "  Records: " + place);
        out.println("Stop with Ctrl-C. Cells can burn; do not rely on this program alone.");
        out.flush();
        tellLinks(rack, out);
        Thread.currentThread().join();
        return 0;
    }

    private static void stop(RunningRack rack, AlarmWays ways, LifeAgent life) {
        life.close();
        rack.close();
        ways.close();
    }

    /** On a thread of its own, so that the rack is watched on whatever becomes of the telling. */
    private static void tellLinks(RunningRack rack, PrintWriter out) {
        LinkLines lines = new LinkLines();
        Thread teller = new Thread(
                () -> {
                    try {
                        while (true) {
                            lines.news(rack.view()).forEach(out::println);
                            out.flush();
                            Thread.sleep(LINK_LOOK_MILLIS);
                        }
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                },
                "links");
        teller.setDaemon(true);
        teller.start();
    }

    private static CellCard card(CellEntry cell) {
        return new CellCard(
                cell.tag(),
                cell.chemistry().judged(),
                cell.ratedAmpereHours(),
                cell.loadOhms(),
                cell.switched(),
                cell.string().isPresent(),
                cell.string(),
                Optional.of(new LoadTolerance(cell.loadTolerancePercent() / 100)));
    }

    private static BuiltIn procedure(CellEntry cell) {
        return BuiltIn.ofKey(cell.procedure()).orElseThrow();
    }

    private static void expect(RunningRack rack, CellEntry cell, PrintWriter out) {
        rack.expect(cell.board(), cell.channel(), card(cell), procedure(cell).procedure())
                .ifPresent(objection -> out.println("Cell " + cell.tag() + " is NOT watched. " + objection));
    }

    private static void advise(CellEntry cell, PrintWriter out) {
        procedure(cell)
                .advice(cell.chemistry().judged(), cell.ratedAmpereHours())
                .ifPresent(advice -> out.println("Cell " + cell.tag() + " is judged by " + cell.procedure() + "; "
                        + advice + ", see docs/procedure.md."));
    }
}
