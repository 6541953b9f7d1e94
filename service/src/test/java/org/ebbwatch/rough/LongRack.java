package org.ebbwatch.rough;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/**
 * An accelerated rack on which cell after cell goes the whole way from check-in to release. Somebody does at once whatever is
 * asked for, and puts the next cell on. One scan a second of event time.
 */
final class LongRack implements AutoCloseable {
    private static final String BOARD = "bench";
    private static final int SPEED = 20_000;
    private static final long SCAN_MILLIS = 1_000;
    private static final long WORK_MILLIS = 3_600_000;
    private static final int LOOK_MILLIS = 5;
    private static final double AMPERE_HOURS = 0.7;
    private static final int OHMS = 12;

    private final Path records;
    private final int cells;
    private final StoredRack storage;
    private final SimRunner board;
    private final RunningRack rack;
    private final Set<UUID> bonded = new HashSet<>();
    private final Set<UUID> over = new HashSet<>();
    private int tags;

    LongRack(Path records, int cells, HostClock clock) throws IOException {
        this.records = Files.createDirectories(records);
        this.cells = cells;
        List<ChannelSpec> channels = IntStream.range(0, cells)
                .mapToObj(i -> ChannelSpec.switched(cell("simulated"), OHMS))
                .toList();
        BoardSpec spec = BoardSpec.build("SIM-LONG", channels).done();
        board = new SimRunner(new SimBoard(spec, 3, SPEED, SCAN_MILLIS), TcpPort.listen(0), SPEED).start();
        storage = StoredRack.open(records);
        var address = PortAddress.parse(board.address(), PortAddress.USUAL_BAUD).orElseThrow();
        rack = new RunningRack(
                List.of(new BoardPort(BOARD, Optional.empty(), address::port)),
                storage,
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                clock);
        for (int channel = 0; channel < cells; channel++) {
            rack.expect(BOARD, channel, card(), Procedure.careful());
        }
        rack.start();
    }

    private static CellSpec cell(String tag) {
        return CellSpec.build(tag, org.ebbwatch.sim.cell.Chemistry.NMC, AMPERE_HOURS)
                .stateOfCharge(0.6)
                .slowShare(new SlowShare(0.0012, 60))
                .done();
    }

    private CellCard card() {
        return new CellCard("cell-" + ++tags, Chemistry.LAYERED_OXIDE, AMPERE_HOURS, OHMS, true, false);
    }

    /** Event time of the last scan. */
    long eventMillis() {
        return rack.view().boards().get(0).eventMillis();
    }

    /** Lets the rack work until that event time. */
    void runTo(long untilMillis) throws InterruptedException {
        while (eventMillis() < untilMillis) {
            for (PassageView passage : rack.view().passages()) {
                attend(passage);
            }
            Thread.sleep(LOOK_MILLIS);
        }
    }

    private void attend(PassageView passage) {
        int channel = passage.channel();
        if (passage.standing().contains(Wish.ASK_PUT_ON)) {
            rack.with(watch -> watch.act(passage.id(), Act.PUT_ON));
        } else if (passage.standing().contains(Wish.ASK_METER)) {
            double volts = board.call(it -> it.truth(channel).leadVolts()).join();
            rack.with(watch -> {
                watch.metered(passage.id(), volts);
                return watch;
            });
        } else if (passage.standing().contains(Wish.ASK_TIE_OFF)) {
            rack.with(watch -> {
                watch.announced(passage.id(), WORK_MILLIS);
                return watch.act(passage.id(), Act.TIE_OFF);
            });
        } else if (passage.phase() == Phase.TIE_OFF && bonded.add(passage.id())) {
            board.call(it -> {
                        it.bond(channel);
                        it.contain(channel, true);
                        return it;
                    })
                    .join();
        } else if (passage.standing().contains(Wish.ASK_PART)) {
            rack.with(watch -> watch.act(passage.id(), Act.PART));
            board.call(it -> {
                        it.part(channel);
                        return it;
                    })
                    .join();
        } else if (passage.standing().contains(Wish.ASK_RELEASE)) {
            rack.with(watch -> watch.act(passage.id(), Act.RELEASE));
        } else if (passage.phase() == Phase.HELD) {
            rack.with(watch -> watch.act(passage.id(), Act.WITHDRAW));
        } else if (passage.phase().isOver() && over.add(passage.id())) {
            next(channel);
        }
    }

    private void next(int channel) {
        board.call(it -> {
                    it.takeOff(channel);
                    it.putOn(channel, cell("simulated"));
                    return it;
                })
                .join();
        rack.with(watch -> watch.checkIn(BOARD, channel, card(), Procedure.careful(), 0));
    }

    RackView view() {
        return rack.view();
    }

    /** How many cells have gone the whole way. */
    long released() {
        return rack.view().passages().stream()
                .filter(passage -> passage.phase() == Phase.RELEASED)
                .count();
    }

    int channels() {
        return cells + 3;
    }

    /** What the records take on disk. */
    long storeBytes() throws IOException {
        try (Stream<Path> files = Files.list(records)) {
            long bytes = 0;
            for (Path file : files.toList()) {
                bytes += Files.size(file);
            }
            return bytes;
        }
    }

    /** Phases and findings of every passage, as they were written down, by tag. */
    static List<String> recorded(Path records) {
        try (StoredRack stored = StoredRack.open(records)) {
            return stored.cards().stream()
                    .map(card -> line(stored, card))
                    .collect(Collectors.toCollection(ArrayList::new));
        }
    }

    private static String line(StoredRack stored, PassageCard card) {
        return card.cell().tag() + " " + stored.recorded(card);
    }

    /** Stops the board and the watch. */
    @Override
    public void close() throws IOException {
        rack.close();
        board.close();
    }
}
