package org.ebbwatch.killed;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;

/**
 * Watches one board with two cells until it is killed. Tells a line on its output for every hour of event time and whenever a
 * passage changed; does what lines on its input say: {@code act TAG ACT}, or {@code tie TAG} to announce an hour of work and
 * say that the leads are bonded.
 */
public final class WatchProcess {
    public static final String BOARD = "bench";
    public static final List<CellCard> CELLS = List.of(
            new CellCard("sound", Chemistry.LAYERED_OXIDE, 0.7, 24, true, false),
            new CellCard("warm", Chemistry.LAYERED_OXIDE, 0.7, 24, true, false));

    private static final long HOUR_MILLIS = 3_600_000;

    /** The careful procedure with the shortest times that still show each phase. */
    private static final Procedure BRISK = new Procedure(
            "brisk",
            1,
            new Procedure.Drain(1.0, 0.10, 2 * HOUR_MILLIS, 14 * 24 * HOUR_MILLIS),
            new Procedure.Rest(0.50, 5 * HOUR_MILLIS, HOUR_MILLIS),
            new Procedure.TieOff(5 * HOUR_MILLIS, 2 * HOUR_MILLIS, HOUR_MILLIS, 6 * HOUR_MILLIS, 0.02),
            Procedure.careful().heat(),
            Procedure.careful().plausible());

    private static final long LOOK_MILLIS = 5;

    private final RunningRack rack;
    private final Map<String, String> told = new HashMap<>();

    private WatchProcess(RunningRack rack) {
        this.rack = rack;
    }

    /**
     * Runs until it is killed or its input ends.
     *
     * @param arguments where the records lie, the board's port, and optionally the phase before whose beginning is written
     *     down the process kills itself
     */
    public static void main(String[] arguments) throws Exception {
        var storage = StoredRack.open(Path.of(arguments[0]));
        var address = new PortAddress.Tcp("127.0.0.1", Integer.parseInt(arguments[1]));
        var rack = new RunningRack(
                List.of(new BoardPort(BOARD, Optional.empty(), address::port)),
                arguments.length > 2 ? DeadlyStorage.before(Phase.valueOf(arguments[2]), storage) : storage,
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
        for (int channel = 0; channel < CELLS.size(); channel++) {
            rack.expect(BOARD, channel, CELLS.get(channel), BRISK);
        }
        rack.start();
        new WatchProcess(rack).work();
    }

    /** Starts it over these records; {@code more} as {@link #main} takes it. */
    public static ProcessBuilder command(Path records, String port, String... more) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                WatchProcess.class.getName(),
                records.toString(),
                port));
        command.addAll(List.of(more));
        return new ProcessBuilder(command);
    }

    /** Whether a line it told says that the board has been heard in this run. */
    public static boolean isHeard(String line) {
        return Told.read(line).eventMillis() > 0;
    }

    private void work() throws IOException, InterruptedException {
        var teller = new Thread(this::tellOn, "teller");
        teller.setDaemon(true);
        teller.start();
        var in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            obey(line.split(" "));
        }
        rack.close();
    }

    private void obey(String[] words) {
        PassageView passage = rack.view().passages().stream()
                .filter(it -> it.tag().equals(words[1]))
                .findFirst()
                .orElseThrow();
        rack.with(watch -> {
            if (words[0].equals("act")) {
                return watch.act(passage.id(), Act.valueOf(words[2]));
            }
            watch.announced(passage.id(), HOUR_MILLIS);
            return watch.act(passage.id(), Act.TIE_OFF);
        });
    }

    private void tellOn() {
        try {
            while (true) {
                var view = rack.view();
                long eventMillis = view.boards().get(0).eventMillis();
                view.passages().forEach(passage -> tell(passage, eventMillis));
                Thread.sleep(LOOK_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void tell(PassageView passage, long eventMillis) {
        String key = Math.floorDiv(eventMillis, HOUR_MILLIS) + " " + passage.phase() + passage.standing()
                + passage.findings();
        if (!key.equals(told.put(passage.tag(), key))) {
            System.out.println(Told.of(passage, eventMillis));
        }
    }
}
