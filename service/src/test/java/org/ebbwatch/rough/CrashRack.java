package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/**
 * A rack of 64 channels at one scan a second whose service is killed again and again at random moments, while a board with
 * faults runs on, somebody acts over REST all the time, and a webhook is told of alarms. After each kill a copy of the records
 * is looked at; the service goes on over the records themselves.
 */
final class CrashRack implements AutoCloseable {
    private static final String BOARD = "left";
    private static final int CELLS = 61;
    private static final int CHANNELS = 64;
    private static final int QUIET_FROM = 40;
    private static final int SCAN_MILLIS = 1_000;
    private static final int START_MOST_MILLIS = 300_000;
    private static final List<FaultKind> FAULTS = List.of(
            FaultKind.OPEN_LEAD,
            FaultKind.THERMISTOR_OPEN,
            FaultKind.LOAD_LOST,
            FaultKind.ABSURD_CELSIUS,
            FaultKind.WARMING);

    private final Path folder;
    private final Path records;
    private final Random random;
    private final SentScans sent = new SentScans();
    private final Ear ear = new Ear();
    private final SimRunner board;
    private final ServeProcess service;
    private final Person person;
    private final Trouble trouble = new Trouble();
    private final List<Long> missing = new ArrayList<>();
    private Map<UUID, List<String>> told = new HashMap<>();
    private boolean heard;
    private long lastStored;
    private int holes;
    private int duringStart;

    CrashRack(Path folder, long seed) throws IOException {
        this.folder = folder;
        this.records = Files.createDirectories(folder.resolve("records"));
        this.random = new Random(seed);
        BoardSpec spec = BoardSpec.build("SIM-CRASH", cells())
                .contactInputs(1)
                .faults(faults())
                .done();
        board = new SimRunner(
                        new SimBoard(spec, seed, 1, SCAN_MILLIS), new RoughWire(TcpPort.listen(0), Harm.NONE, sent), 1)
                .start();
        service = new ServeProcess(folder, records, rackFile(), List.of("-XX:TieredStopAtLevel=1"), Map.of());
        person = new Person(new Rest(service), new Random(seed + 1), QUIET_FROM, this::atTheBoard);
    }

    private List<ChannelSpec> cells() {
        return IntStream.range(0, CELLS)
                .mapToObj(i -> {
                    CellSpec cell = CellSpec.build(tag(i), Chemistry.NMC, 0.7)
                            .spread(0.05)
                            .stateOfCharge(0.1 + 0.8 * random.nextDouble())
                            .done();
                    return isSwitched(i) ? ChannelSpec.switched(cell, 24) : ChannelSpec.byHand(cell, 24);
                })
                .toList();
    }

    /** Faults that come and go all the time, on channels that may be touched. */
    private List<Fault> faults() {
        List<Fault> faults = new ArrayList<>();
        for (int second = 8; second < 3_600; second += 2 + random.nextInt(5)) {
            FaultKind kind = FAULTS.get(random.nextInt(FAULTS.size()));
            Fault fault = Fault.on(random.nextInt(QUIET_FROM), kind, Trigger.at(1_000L * second))
                    .lasting(1_000L * (3 + random.nextInt(20)));
            faults.add(kind == FaultKind.WARMING ? fault.with(Map.of("watts", 20.0, "riseMinutes", 0.0)) : fault);
            if (random.nextInt(8) == 0) {
                faults.add(Fault.onBoard(FaultKind.CONTACT, Trigger.at(1_000L * second))
                        .lasting(4_000));
            }
        }
        return faults;
    }

    private static boolean isSwitched(int channel) {
        return channel % 2 == 0;
    }

    private static String tag(int channel) {
        return "cell-" + channel;
    }

    private String rackFile() {
        var text = new StringBuilder(
                        "alarms:\n  night: {from: \"22:00\", to: \"22:00\"}\n  outlets:\n    - webhook:\n        url: ")
                .append(ear.url())
                .append("\nboards:\n  - name: " + BOARD + "\n    port: ")
                .append(board.address())
                .append("\n    contacts:\n      - {input: 0, means: mainsLost, normally: open}\ncells:\n");
        for (int i = 0; i < CELLS; i++) {
            text.append("  - {board: " + BOARD + ", channel: " + i + ", tag: " + tag(i)
                    + ", chemistry: nmc, ratedAmpereHours: 0.7, loadOhms: 24, switched: " + isSwitched(i) + "}\n");
        }
        return text.toString();
    }

    private void atTheBoard(Person.Done done) {
        if (isSwitched(done.channel())) {
            return;
        }
        boolean on = done.act().equals("PUT_ON") || done.act().equals("DRAIN_AGAIN");
        if (on || done.act().equals("TAKE_OFF") || done.act().equals("WITHDRAW")) {
            try {
                board.call(it -> {
                            it.handLoad(done.channel(), on);
                            return it;
                        })
                        .join();
            } catch (CancellationException | CompletionException refused) {
                // It was so already.
            }
        }
    }

    /** Starts the service, kills it at a random moment, and looks at what it left. */
    void crash() throws IOException, InterruptedException {
        person.idle(random.nextInt(3) == 0);
        service.start();
        if (random.nextInt(6) == 0) {
            duringStart++;
            Thread.sleep(random.nextInt(4_000));
        } else {
            awaitScans();
            Thread.sleep(500 + random.nextInt(4_000));
        }
        if (!service.isAlive()) {
            trouble.add("the service ended by itself: " + service.lastSaid());
        }
        boolean watched = heard;
        long atKill = sent.lastScan();
        service.kill();
        Path copy = copy();
        look(copy, watched ? atKill : 0);
        delete(copy);
    }

    private void awaitScans() throws InterruptedException {
        Rest rest = new Rest(service);
        long from = sent.lastScan();
        for (int waited = 0; waited < START_MOST_MILLIS; waited += 50) {
            Thread.sleep(50);
            heard = rest.get("/rack").isPresent();
            if (heard && sent.lastScan() > from + 1) {
                return;
            }
            if (!service.isAlive()) {
                return;
            }
        }
        trouble.add("the service did not answer within five minutes");
    }

    private void look(Path copy, long sentAtKill) {
        try {
            StoredScans stored = StoredScans.check(copy, BOARD, CHANNELS, sent, trouble);
            if (sentAtKill > 0 && stored.last() > lastStored) {
                missing.add(sentAtKill - stored.last());
            }
            holes = stored.holes();
            lastStored = stored.last();
            told = new StoredFacts(copy, trouble).fold(told);
            int gaps = new StoredFacts(copy, trouble).compare(person, ear, stored.lastEventMillis(), tag(QUIET_FROM));
            trouble.unless(gaps >= holes, holes + " holes in the readings and " + gaps + " gaps on record");
        } catch (RuntimeException e) {
            trouble.add("the records cannot be used: " + e);
        }
    }

    /** Lets the service work to its end, and looks whether an alarm was about a cell nobody touched. */
    void finish() throws IOException, InterruptedException {
        person.idle(false);
        service.start();
        awaitScans();
        Thread.sleep(3_000);
        person.leave();
        trouble.unless(service.stop() == 143, "the service did not stop in order");
        look(records, 0);
        for (Ear.Heard heard : ear.heard().values()) {
            boolean quiet = person.channels().entrySet().stream()
                    .anyMatch(
                            it -> it.getValue() >= QUIET_FROM && heard.subject().equals("passage " + it.getKey()));
            trouble.unless(!quiet, "an alarm about a sound cell: " + heard);
        }
    }

    Trouble trouble() {
        return trouble;
    }

    /** Scans that the board had sent at each kill and the records do not hold. */
    List<Long> missing() {
        return missing;
    }

    /** In words: what was going on meanwhile. */
    String work() {
        return person.passageKeys().size() + " acts, " + person.alarmKeys().size() + " steps of alarms, "
                + ear.heard().size() + " messages, "
                + told.values().stream().mapToInt(List::size).sum()
                + " phases and findings, " + holes + " holes, " + duringStart + " kills during a start";
    }

    private Path copy() throws IOException {
        Path copy = Files.createDirectories(folder.resolve("copy"));
        try (Stream<Path> files = Files.list(records)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, copy.resolve(file.getFileName()));
            }
        }
        return copy;
    }

    private static void delete(Path copy) throws IOException {
        try (Stream<Path> files = Files.list(copy)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(copy);
    }

    @Override
    public void close() throws IOException {
        service.close();
        board.close();
        ear.close();
    }
}
