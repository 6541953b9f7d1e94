package org.ebbwatch.cboard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import com.github.f4b6a3.uuid.UuidCreator;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole service, threads and serial library included, against the board in C over a pseudo-terminal. */
class CBoardTest {
    private static final String BOARD = "c";
    private static final Duration SOON = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    private RunningRack rack;

    @Test
    void is_read_switched_found_silent_and_taken_up_again_and_opens_its_loads_without_a_host() throws Exception {
        Path terminal = folder.resolve("tty-c");
        try (CBoard c = CBoard.behind(terminal, folder);
                RunningRack running = rack(terminal)) {
            rack = running;
            rack.start();

            await().atMost(SOON)
                    .until(() -> link() == LinkState.CONNECTED
                            && !Double.isNaN(reading(0).volts()));
            assertThat(reading(0).volts()).isCloseTo(3.7, within(1e-9));
            assertThat(reading(0).celsius()).isCloseTo(22.00, within(1e-9));
            assertThat(reading(2).celsius()).isCloseTo(22.02, within(1e-9));

            checkIn();
            await().atMost(SOON).until(() -> passage().standing().contains(Wish.ASK_PUT_ON));
            act(Act.PUT_ON);
            await().atMost(SOON).until(() -> reading(0).loadApplied());
            assertThat(passage().phase()).isEqualTo(Phase.DRAIN);
            assertThat(reading(0).volts()).isBetween(3.60, 3.675);
            assertThat(reading(0).amperes()).isCloseTo(reading(0).volts() / 4.7, within(1e-3));

            c.meets("stop");
            await().atMost(SOON).until(() -> stands(FindingKind.SILENT));
            assertThat(c.meets("go")).as("loads after its host timeout of 3 s").isEqualTo("0 0");
            await().atMost(SOON).until(() -> !stands(FindingKind.SILENT));
            assertThat(reading(0).loadApplied())
                    .as("before the cell is compared")
                    .isFalse();

            long before = eventMillis();
            c.meets("reboot");
            await().atMost(SOON).until(() -> link() == LinkState.CONNECTED && eventMillis() > before + 1_000);
            assertThat(passage().phase()).isEqualTo(Phase.DRAIN);
            assertThat(passage().findings()).isEmpty();

            c.meets("open 0");
            await().atMost(SOON).until(() -> stands(FindingKind.SENSOR_FAULT));
            assertThat(reading(0).celsius()).isNaN();
        }
    }

    /** The service ends, and nobody tells the board anything any more. Its host timeout is 3 s. */
    @Test
    void opens_its_loads_by_itself_when_the_service_is_gone() throws Exception {
        Path terminal = folder.resolve("tty-c");
        try (CBoard c = CBoard.behind(terminal, folder)) {
            try (RunningRack running = rack(terminal)) {
                rack = running;
                drain();
                assertThat(c.meets("go")).as("loads while the service lives").isEqualTo("1 0");
            }
            await().atMost(SOON).until(() -> c.meets("go").equals("0 0"));
        }
    }

    @Test
    void has_its_loads_open_after_a_restart() throws Exception {
        Path terminal = folder.resolve("tty-c");
        try (CBoard c = CBoard.behind(terminal, folder);
                RunningRack running = rack(terminal)) {
            rack = running;
            drain();
            assertThat(c.meets("reboot")).isEqualTo("0 0");
            await().atMost(SOON)
                    .until(() -> link() == LinkState.CONNECTED && !reading(0).loadApplied());
            assertThat(passage().phase()).isEqualTo(Phase.DRAIN);
        }
    }

    private void drain() {
        rack.start();
        await().atMost(SOON)
                .until(() -> link() == LinkState.CONNECTED
                        && !Double.isNaN(reading(0).volts()));
        checkIn();
        await().atMost(SOON).until(() -> passage().standing().contains(Wish.ASK_PUT_ON));
        act(Act.PUT_ON);
        await().atMost(SOON).until(() -> reading(0).loadApplied());
    }

    private RunningRack rack(Path terminal) {
        return new RunningRack(
                List.of(new BoardPort(
                        BOARD,
                        Optional.of("C-0001"),
                        new PortAddress.Serial(terminal.toString(), PortAddress.USUAL_BAUD)::port)),
                StoredRack.open(folder.resolve("records")),
                NightHours.usual(ZoneOffset.UTC),
                List.of(),
                Optional.empty(),
                UuidCreator::getTimeOrderedEpoch,
                new SystemHostClock());
    }

    private void checkIn() {
        var cell = new CellCard("A-1", Chemistry.LAYERED_OXIDE, 2, 4.7, true, false);
        DeskAnswer answer = rack.ask(new DeskRequest.CheckIn(BOARD, 0, cell, Procedure.careful()), "check-in-1");
        assertThat(answer).isInstanceOf(DeskAnswer.Done.class);
    }

    private void act(Act act) {
        DeskAnswer answer =
                rack.ask(new DeskRequest.Do(passage().id(), passage().sequence(), act), "key-" + act.name());
        assertThat(answer).isInstanceOf(DeskAnswer.Done.class);
    }

    private LinkState link() {
        return rack.view().boards().get(0).link();
    }

    private long eventMillis() {
        return rack.view().boards().get(0).eventMillis();
    }

    private ChannelView reading(int channel) {
        return rack.view().channels().stream()
                .filter(view -> view.channel() == channel)
                .findFirst()
                .orElse(new ChannelView(BOARD, channel, null, Double.NaN, 0, Double.NaN, Double.NaN, false));
    }

    private PassageView passage() {
        return rack.view().on(BOARD, 0).orElseThrow();
    }

    private boolean stands(FindingKind kind) {
        return passage().findings().stream().anyMatch(finding -> finding.kind() == kind);
    }
}
