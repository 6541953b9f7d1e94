package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.handwork.QuietRack.BOARD;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Receipt;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A desk over a bench with one switched, one hand-loaded and one free channel, and what tests ask of it. */
abstract class DeskBench {
    static final int SWITCHED = 0;
    static final int BY_HAND = 1;
    static final int FREE = 2;
    static final int AMBIENT = 3;
    static final int WATCH = 5;
    static final long HOUR = 3_600_000;

    @TempDir
    Path records;

    QuietRack rack;
    int keys;

    @BeforeEach
    void a_bench_with_a_switched_a_hand_loaded_and_a_free_channel() {
        CellSpec cell = CellSpec.build("A", NMC, 2.0).done();
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(
                                ChannelSpec.switched(cell, 22),
                                ChannelSpec.byHand(CellSpec.build("B", NMC, 2.0).done(), 22),
                                ChannelSpec.empty(22)))
                .thermometers(true, true, 1, true)
                .done();
        rack = QuietRack.of(board, records);
    }

    @AfterEach
    void close() {
        rack.close();
    }

    String key() {
        return "request-" + ++keys;
    }

    DeskAnswer ask(DeskRequest request) {
        return rack.ask(request, key());
    }

    static CellCard card(String tag, boolean switched, boolean inString) {
        return new CellCard(tag, Chemistry.LAYERED_OXIDE, 2.0, 22, switched, inString);
    }

    /** Of a string on the first two channels. */
    static CellCard ofString(String tag) {
        return new CellCard(
                tag, Chemistry.LAYERED_OXIDE, 2.0, 22, true, true, Optional.of(new CellString("P1", SWITCHED, 2)));
    }

    static CheckIn checkIn(int channel, CellCard cell) {
        return new CheckIn(BOARD, channel, cell, Procedure.careful());
    }

    PassageView checkedIn(int channel) {
        DeskAnswer answer = ask(checkIn(channel, card(channel == SWITCHED ? "A" : "B", channel == SWITCHED, false)));
        assertThat(answer).isInstanceOf(Done.class);
        rack.pass(5 * 60_000);
        return passage(((Done) answer).receipt().passage());
    }

    PassageView passage(UUID id) {
        return rack.view().passages().stream()
                .filter(passage -> passage.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    Receipt done(DeskRequest request) {
        DeskAnswer answer = ask(request);
        assertThat(answer).isInstanceOf(Done.class);
        assertThat(((Done) answer).onDisk()).isTrue();
        return ((Done) answer).receipt();
    }

    void refusedWithoutATrace(UUID passage, Runnable refused) {
        List<String> before = rack.journal(passage);
        PassageView view = passage(passage);
        long news = rack.happenings().latest();
        refused.run();
        assertThat(rack.journal(passage)).isEqualTo(before);
        assertThat(passage(passage)).isEqualTo(view);
        assertThat(rack.happenings().latest()).isEqualTo(news);
    }
}
