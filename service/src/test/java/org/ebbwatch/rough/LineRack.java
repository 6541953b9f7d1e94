package org.ebbwatch.rough;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.link.SimPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/** A rack in this process, at real speed, whose boards are simulated and whose lines can be harmed. */
final class LineRack implements AutoCloseable {
    private final Path records;
    private final int cells;
    private final long scanMillis;
    private final Map<String, SimRunner> boards = new LinkedHashMap<>();
    private final Map<String, RoughWire> wires = new LinkedHashMap<>();
    private final Map<String, SentScans> sent = new LinkedHashMap<>();
    private final List<BoardPort> ports = new ArrayList<>();
    private StoredRack storage;
    private RunningRack rack;

    LineRack(Path records, int cells, long scanMillis) throws IOException {
        this.records = Files.createDirectories(records);
        this.cells = cells;
        this.scanMillis = scanMillis;
    }

    /** A board whose cells are checked in as soon as it is heard. */
    LineRack board(String name, String serialNumber, SimPort port, Harm harm, List<Fault> faults) throws IOException {
        List<ChannelSpec> channels = IntStream.range(0, cells)
                .mapToObj(i -> ChannelSpec.switched(
                        CellSpec.build(tag(name, i), org.ebbwatch.sim.cell.Chemistry.NMC, 2.6)
                                .stateOfCharge(0.5)
                                .done(),
                        10))
                .toList();
        var spec = BoardSpec.build(serialNumber, channels).faults(faults).done();
        sent.put(name, new SentScans());
        wires.put(name, new RoughWire(port, harm, sent.get(name)));
        boards.put(
                name, new SimRunner(new SimBoard(spec, boards.size() + 1, 1, scanMillis), wires.get(name), 1).start());
        Supplier<Port> reached =
                PortAddress.parse(port.address(), PortAddress.USUAL_BAUD).orElseThrow()::port;
        ports.add(new BoardPort(name, Optional.empty(), reached));
        return this;
    }

    private static String tag(String board, int channel) {
        return board + "-" + channel;
    }

    LineRack start() {
        storage = StoredRack.open(records);
        rack = new RunningRack(
                ports,
                storage,
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
        for (String board : boards.keySet()) {
            for (int channel = 0; channel < cells; channel++) {
                rack.expect(board, channel, card(board, channel), Procedure.careful());
            }
        }
        rack.start();
        return this;
    }

    private static CellCard card(String board, int channel) {
        return new CellCard(tag(board, channel), Chemistry.LAYERED_OXIDE, 2.6, 10, true, false);
    }

    /** Why the records cannot be kept now. */
    Optional<String> storageTrouble() {
        return rack.with(watch -> storage.trouble());
    }

    RunningRack rack() {
        return rack;
    }

    SimRunner simulated(String board) {
        return boards.get(board);
    }

    SentScans sent(String board) {
        return sent.get(board);
    }

    void harm(String board, Harm harm) {
        wires.get(board).harm(harm);
    }

    BoardView view(String board) {
        return rack.view().boards().stream()
                .filter(view -> view.name().equals(board))
                .findFirst()
                .orElseThrow();
    }

    /** Kinds of the alarms that are alive, standing or not. */
    Set<String> alarms() {
        return rack.alarms().alarms().stream()
                .map(AlarmView::kind)
                .map(Enum::name)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Stops the watch, and tells what its records hold. */
    Kept stop(Trouble trouble) {
        rack.close();
        rack = null;
        Map<String, StoredScans> scans = new LinkedHashMap<>();
        boards.keySet()
                .forEach(name -> scans.put(name, StoredScans.check(records, name, cells + 3, sent.get(name), trouble)));
        Set<String> findings = new TreeSet<>();
        Set<String> phases = new TreeSet<>();
        try (StoredRack stored = StoredRack.open(records)) {
            for (PassageCard card : stored.cards()) {
                var refolded = stored.refold(card);
                trouble.unless(refolded.events().equals(stored.recorded(card)), card.id() + " is folded otherwise");
                phases.add(refolded.judge().phase().name());
                stored.recorded(card).stream()
                        .map(line -> line.split(" "))
                        .filter(words -> words[2].startsWith("{"))
                        .forEach(words -> findings.add(words[1]));
            }
        }
        return new Kept(scans, findings, phases);
    }

    /**
     * What the records hold.
     *
     * @param scans of each board
     * @param findings every kind that was ever raised
     * @param phases in which passages ended
     */
    record Kept(Map<String, StoredScans> scans, Set<String> findings, Set<String> phases) {}

    @Override
    public void close() throws IOException {
        if (rack != null) {
            rack.close();
        }
        for (SimRunner board : boards.values()) {
            board.close();
        }
    }
}
