package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ebbwatch.handwork.QuietRack.BOARD;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.ebbwatch.cli.Ebbwatch;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.passage.DeskAnswer.UnfitChannel;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.DeskRequest.Announce;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.DeskRequest.Load;
import org.ebbwatch.passage.DeskRequest.Move;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.StringSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Three cells in series on neighbouring channels, one of them nearly empty, and channels on which they can finish singly. */
class StringJobTest {
    private static final int CELLS = 3;
    private static final int WEAK = 1;
    private static final double STRING_OHMS = 20;
    private static final double OWN_OHMS = 5;
    private static final long MINUTE = 60_000;

    @TempDir
    private Path records;

    private QuietRack rack;
    private final List<UUID> passages = new ArrayList<>();
    private int keys;

    @AfterEach
    void close() {
        rack.close();
    }

    private void strung(boolean switched) {
        List<ChannelSpec> channels = new ArrayList<>();
        for (int i = 0; i < CELLS; i++) {
            double charge = i == WEAK ? 0.15 : 0.5;
            CellSpec cell = CellSpec.build("A-" + i, NMC, 0.5)
                    .stateOfCharge(charge)
                    .slowShare(new SlowShare(0.0012, 60))
                    .done();
            channels.add(new ChannelSpec(ChannelRole.CELL, Optional.of(cell), 0, 0, 0, false, false, true));
        }
        for (int i = 0; i < CELLS; i++) {
            channels.add(ChannelSpec.empty(OWN_OHMS));
        }
        BoardSpec board = BoardSpec.build("EB-1", channels)
                .strings(List.of(new StringSpec(0, CELLS, STRING_OHMS, switched)))
                .thermometers(true, true, 1, false)
                .done();
        rack = QuietRack.of(board, 1_000, records);
        for (int i = 0; i < CELLS; i++) {
            DeskAnswer answer = ask(checkIn(i, "A-" + i, switched, new CellString("P1", 0, CELLS)));
            assertThat(answer).isInstanceOf(Done.class);
            passages.add(((Done) answer).receipt().passage());
        }
        rack.pass(MINUTE);
    }

    /** Shorter than anything a person should use. */
    private static Procedure quick() {
        Procedure careful = Procedure.careful();
        return new Procedure(
                "quick",
                1,
                new Procedure.Drain(1, 0.1, hours(6), hours(14 * 24)),
                new Procedure.Rest(0.5, hours(8), hours(1)),
                new Procedure.TieOff(hours(2), hours(1), hours(1), hours(6), 0.02),
                careful.heat(),
                careful.plausible());
    }

    private static long hours(long hours) {
        return Duration.ofHours(hours).toMillis();
    }

    private static CheckIn checkIn(int channel, String tag, boolean switched, CellString string) {
        var cell = new CellCard(tag, Chemistry.LAYERED_OXIDE, 0.5, STRING_OHMS, switched, true, Optional.of(string));
        return new CheckIn(BOARD, channel, cell, quick());
    }

    private DeskAnswer ask(DeskRequest request) {
        return rack.ask(request, "request-" + ++keys);
    }

    private DeskAnswer says(int cell, Act act) {
        PassageView passage = passage(cell);
        return ask(new Do(passage.id(), passage.sequence(), act));
    }

    private void done(DeskAnswer answer) {
        assertThat(answer).isInstanceOf(Done.class);
    }

    private PassageView passage(int cell) {
        return rack.view().passages().stream()
                .filter(passage -> passage.id().equals(passages.get(cell)))
                .findFirst()
                .orElseThrow();
    }

    private void allAreIn(Phase phase) {
        for (int cell = 0; cell < CELLS; cell++) {
            assertThat(passage(cell).phase()).as("cell %d", cell).isEqualTo(phase);
        }
    }

    private void anotherRunFindsTheSame() {
        List<String> before = passages.stream().map(this::standing).toList();
        rack.close();
        rack = rack.again(records);
        assertThat(passages.stream().map(this::standing).toList()).isEqualTo(before);
        for (UUID passage : passages) {
            List<List<String>> twice = rack.recordedAndFoldedAgain(passage);
            assertThat(twice.get(1)).isEqualTo(twice.get(0));
        }
    }

    private String standing(UUID id) {
        PassageView passage = rack.view().passages().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
        return passage.phase() + " " + passage.reason() + " " + passage.findings();
    }

    /** Lets time go by until the string is opened; gives the lowest volts that the weak cell came to. */
    private double lowestVoltsUntilOpened() {
        double lowest = 5;
        for (int second = 0; passage(WEAK).phase() == Phase.DRAIN; second++) {
            assertThat(second).isLessThan(7_200);
            rack.step();
            lowest = Math.min(lowest, rack.hands().truth(WEAK).leadVolts());
        }
        return lowest;
    }

    @Test
    void its_load_opens_before_the_weak_cell_is_reversed_and_its_cells_finish_singly() throws IOException {
        strung(true);
        done(says(2, Act.PUT_ON));
        rack.pass(3 * MINUTE);
        allAreIn(Phase.DRAIN);
        assertThat(rack.hands().truth(0).loadApplied()).isTrue();
        double taken = passage(0).ampereHours();
        double volts = 0;
        for (int cell = 0; cell < CELLS; cell++) {
            volts += rack.hands().truth(cell).leadVolts();
        }
        assertThat(taken).isCloseTo(volts / STRING_OHMS * 3 / 60, within(0.1 * taken));
        assertThat(passage(2).ampereHours()).isCloseTo(taken, within(1e-6));
        anotherRunFindsTheSame();

        double lowest = lowestVoltsUntilOpened();
        rack.pass(MINUTE);

        assertThat(lowest).isBetween(0.5, 1.0);
        assertThat(rack.hands().truth(0).loadApplied()).isFalse();
        allAreIn(Phase.HELD);
        for (int cell = 0; cell < CELLS; cell++) {
            assertThat(passage(cell).reason()).contains("opened because of A-1; finish its cells singly");
            assertThat(passage(cell).findings()).extracting("kind").doesNotContain(FindingKind.REVERSED);
        }
        assertThat(says(0, Act.DRAIN_AGAIN)).isInstanceOfSatisfying(NotNow.class, refused -> assertThat(refused.why())
                .contains("which load of its own"));
        anotherRunFindsTheSame();

        for (int cell = 0; cell < CELLS; cell++) {
            finishesSingly(cell);
        }
        rack.pass(10 * MINUTE);
        allAreIn(Phase.DRAIN);
        anotherRunFindsTheSame();
        for (int cell = 0; cell < CELLS; cell++) {
            goesOnToRelease(cell);
        }
        theEvidenceHolds();
    }

    private void finishesSingly(int cell) {
        UUID id = passages.get(cell);
        done(ask(new Announce(id, passage(cell).sequence(), Work.HAND_WORK, 10)));
        rack.hands().move(cell, CELLS + cell);
        done(ask(new Move(id, passage(cell).sequence(), CELLS + cell)));
        done(ask(new Load(id, passage(cell).sequence(), OWN_OHMS, true)));
        rack.pass(MINUTE);
        done(says(cell, Act.DRAIN_AGAIN));
    }

    private void goesOnToRelease(int cell) {
        int channel = CELLS + cell;
        waitsFor(cell, Wish.ASK_TIE_OFF);
        rack.hands().bond(channel);
        done(says(cell, Act.TIE_OFF));
        waitsFor(cell, Wish.ASK_PART);
        rack.hands().part(channel);
        done(says(cell, Act.PART));
        waitsFor(cell, Wish.ASK_RELEASE);
        done(says(cell, Act.RELEASE));
        assertThat(rack.hands().truth(channel).restedVoltsAfter24h()).isLessThan(0.5);
    }

    private void waitsFor(int cell, Wish wish) {
        for (int minute = 0; !passage(cell).standing().contains(wish); minute += 10) {
            assertThat(minute).as(() -> passage(cell).toString()).isLessThan(60 * 96);
            rack.pass(10 * MINUTE);
        }
    }

    private void theEvidenceHolds() throws IOException {
        rack.close();
        Path folder = Files.createDirectory(records.resolve("handed over"));
        assertThat(program("bundle", "--storage", records.toString(), "--to", folder.toString()))
                .isZero();
        try (Stream<Path> bundles = Files.list(folder)) {
            assertThat(bundles.toList()).hasSize(CELLS).allSatisfy(bundle -> assertThat(
                            program("verify", bundle.toString()))
                    .isZero());
        }
        rack = rack.again(records);
    }

    private static int program(String... arguments) {
        var program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(new StringWriter()));
        return program.execute(arguments);
    }

    @Test
    void what_a_person_does_with_its_load_concerns_all_its_cells() {
        strung(false);
        rack.hands().handLoad(0, true);
        done(says(2, Act.PUT_ON));
        rack.pass(MINUTE);
        allAreIn(Phase.DRAIN);
        assertThat(passages).allSatisfy(id -> assertThat(standing(id)).contains("load put on"));

        rack.hands().handLoad(0, false);
        done(says(0, Act.TAKE_OFF));
        for (int cell = 0; cell < CELLS; cell++) {
            assertThat(passage(cell).reason()).isEqualTo("taken off early");
        }
        anotherRunFindsTheSame();
    }

    @Test
    void a_weak_cell_of_a_string_that_hands_loaded_rings_for_somebody_to_take_the_load_off() {
        strung(false);
        rack.hands().handLoad(0, true);
        done(says(WEAK, Act.PUT_ON));

        assertThat(lowestVoltsUntilOpened()).isBetween(0.5, 1.0);

        allAreIn(Phase.HELD);
        assertThat(passage(0).findings()).extracting("kind").containsExactly(FindingKind.LOAD_STUCK);
        rack.hands().handLoad(0, false);
        for (int cell = 0; cell < CELLS; cell++) {
            done(says(cell, Act.TAKE_OFF));
        }
        rack.pass(MINUTE);
        assertThat(passage(0).loadOn()).isFalse();
    }

    @Test
    void withdrawing_one_of_its_cells_opens_it_for_the_others() {
        strung(true);
        done(says(0, Act.PUT_ON));
        rack.pass(MINUTE);

        done(says(2, Act.WITHDRAW));
        rack.pass(MINUTE);

        assertThat(rack.hands().truth(0).loadApplied()).isFalse();
        assertThat(passage(0).phase()).isEqualTo(Phase.HELD);
        assertThat(passage(0).reason()).contains("because of A-2");
    }

    @Test
    void only_a_whole_string_on_neighbouring_channels_goes_on_its_load() {
        strung(true);
        done(says(2, Act.WITHDRAW));

        assertThat(says(0, Act.PUT_ON)).isInstanceOfSatisfying(NotNow.class, refused -> assertThat(refused.why())
                .isEqualTo("Only 2 of the 3 cells of the string P1 are checked in."));
        assertThat(ask(checkIn(4, "B", true, new CellString("P1", 0, CELLS))))
                .isInstanceOfSatisfying(
                        UnfitChannel.class, refused -> assertThat(refused.why()).contains("neighbouring"));
        assertThat(ask(checkIn(2, "B", true, new CellString("P2", 2, 2))))
                .isInstanceOfSatisfying(
                        UnfitChannel.class, refused -> assertThat(refused.why()).contains("in the way of the string"));
        assertThat(ask(checkIn(3, "B", true, new CellString("P2", 3, 2)))).isInstanceOf(Done.class);
    }
}
