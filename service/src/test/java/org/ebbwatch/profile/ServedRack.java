package org.ebbwatch.profile;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.cli.BoardPorts;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.BoardEntry;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;

/** The whole service, threads and ports included, at the one board of a rack file. */
public final class ServedRack implements AutoCloseable {
    private final RunningRack rack;
    private final String board;

    private ServedRack(RunningRack rack, String board) {
        this.rack = rack;
        this.board = board;
        rack.start();
    }

    /**
     * Writes a rack file and a profile into a folder and serves them.
     *
     * @param rackFile of one board, whose profile it names
     * @param port in place of the one in the rack file
     */
    public static ServedRack of(Path folder, String rackFile, String profile, String port)
            throws IOException, RackFileFaulty {
        Path file = folder.resolve("rack.yml");
        String moved = rackFile.replaceFirst("port: .*", "port: " + port);
        Files.writeString(file, port.startsWith("tcp:") ? moved.replaceFirst("    baud: .*\n", "") : moved);
        BoardEntry entry = RackFile.read(file).boards().get(0);
        Files.writeString(entry.profile().orElseThrow(), profile);
        List<BoardPort> boards = new ArrayList<>(List.of(BoardPorts.of(entry)));
        RunningRack rack = new RunningRack(
                boards,
                StoredRack.open(folder.resolve("records")),
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
        return new ServedRack(rack, entry.name());
    }

    public BoardView board() {
        return rack.view().boards().get(0);
    }

    public ChannelView channel(int channel) {
        return rack.view().channels().stream()
                .filter(view -> view.channel() == channel)
                .findFirst()
                .orElse(new ChannelView(board, channel, null, Double.NaN, 0, Double.NaN, Double.NaN, false));
    }

    /** A cell is checked in on channel 0. */
    public void checkIn(double loadOhms, boolean switched) {
        var cell = new CellCard("A-1", Chemistry.LAYERED_OXIDE, 2, loadOhms, switched, false);
        done(rack.ask(new DeskRequest.CheckIn(board, 0, cell, Procedure.careful()), "check-in"));
    }

    /** A person does something with the cell of channel 0. */
    public void act(Act act) {
        done(rack.ask(new DeskRequest.Do(passage().id(), passage().sequence(), act), "act " + act.name()));
    }

    public PassageView passage() {
        return rack.view().on(board, 0).orElseThrow();
    }

    public boolean stands(FindingKind kind) {
        return passage().findings().stream().anyMatch(finding -> finding.kind() == kind);
    }

    @Override
    public void close() {
        rack.close();
    }

    private static void done(DeskAnswer answer) {
        if (!(answer instanceof DeskAnswer.Done)) {
            throw new AssertionError("not done: " + answer);
        }
    }
}
