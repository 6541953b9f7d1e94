package org.ebbwatch.profile;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.profile.modbus.Modules;
import org.ebbwatch.profile.modbus.TwistedPair;
import org.ebbwatch.sim.link.PtyPort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of docs/boards, read from the pages themselves, each with the whole service. {@code c.md} has its CBoardTest. */
class BoardDocumentsTest {
    private static final Duration SOON = Duration.ofSeconds(30);
    private static final String BOARD_IN_RACK_FILE = "in the [rack file]";

    @TempDir
    Path folder;

    @Test
    void a_board_that_prints_lines_is_read_by_its_page() throws Exception {
        BoardDocument page = BoardDocument.named("text.md");
        try (PtyPort printer = PtyPort.open();
                ServedRack rack = ServedRack.of(
                        folder,
                        page.yamlAfter(BOARD_IN_RACK_FILE),
                        page.yamlAfter("A complete example"),
                        printer.address())) {
            Printer board = new Printer(printer);
            board.says("ets Jan  8 2013,rst cause:2, boot mode:(3,6)\r\nms;u1;u2;t1;t2;air\r\n");
            await().atMost(SOON).until(() -> {
                board.prints("3712,4;3698,0;512;794;22,6");
                return rack.board().link() == LinkState.CONNECTED
                        && !Double.isNaN(rack.channel(0).volts());
            });
            assertThat(rack.board().serialNumber()).isEqualTo("BENCH-0001");
            assertThat(rack.channel(0).volts()).isCloseTo(2 * 3.7124, within(1e-6));
            assertThat(rack.channel(1).volts()).isCloseTo(2 * 3.698, within(1e-6));
            assertThat(rack.channel(0).celsius())
                    .as("512 of 1023 are 10019 ohms, 0.19 %% and so 0.05 K from 25 degrees")
                    .isCloseTo(24.95, within(0.1));
            assertThat(rack.channel(1).celsius())
                    .as("794 of 1023, 34.67 kilohms")
                    .isBetween(-7.0, -5.0);
            assertThat(rack.channel(2).celsius()).isCloseTo(22.6, within(1e-9));

            rack.checkIn(4.7, false);
            await().atMost(SOON).until(() -> {
                board.prints("3712,4;3698,0;1023;794;85,0");
                return rack.stands(FindingKind.SENSOR_FAULT);
            });
            assertThat(rack.channel(0).celsius()).as("an open thermistor").isNaN();
            assertThat(rack.channel(2).celsius())
                    .as("a 1-Wire sensor not yet asked")
                    .isNaN();

            await().atMost(SOON).until(() -> {
                board.prints("3712,4;3698,0;512;794");
                return rack.board().detail().contains("5 columns instead of 6");
            });
            board.isSwitchedOnAgain();
            long before = rack.board().eventMillis();
            await().atMost(SOON).until(() -> {
                board.prints("3712,4;3698,0;512;794;22,6");
                return rack.board().eventMillis() > before + 3_000;
            });
            assertThat(rack.board().detail()).doesNotContain("columns");
        }
    }

    @Test
    void modules_on_a_serial_line_are_read_and_switched_by_their_page() throws Exception {
        BoardDocument page = BoardDocument.named("modbus.md");
        try (TwistedPair line = new TwistedPair();
                Modules modules = Modules.onLine(line.deviceEnd(), 19_200)) {
            modules.input(1, 0, 3_712);
            modules.input(1, 1, 0xFFFF & -20);
            modules.lowFirstFloat(2, 256, 25.25f);
            modules.lowFirstFloat(2, 258, -9999f);
            modules.lowFirstFloat(2, 260, 21.5f);
            modules.senses(16, 32);
            try (ServedRack rack = ServedRack.of(
                    folder, page.yamlAfter(BOARD_IN_RACK_FILE), page.yamlAfter("A complete example"), line.hostEnd())) {
                await().atMost(SOON).until(() -> !Double.isNaN(rack.channel(0).volts()));
                assertThat(rack.board().serialNumber()).isEqualTo("MODULES-0001");
                assertThat(rack.board().detail()).contains("does not open its loads by itself");
                assertThat(rack.channel(0).volts()).isCloseTo(3.712, within(1e-9));
                assertThat(rack.channel(0).celsius()).isCloseTo(25.25, within(1e-9));
                assertThat(rack.channel(1).volts()).isCloseTo(-0.020, within(1e-9));
                assertThat(rack.channel(1).celsius()).as("an open sensor").isNaN();
                assertThat(rack.channel(2).celsius()).isCloseTo(21.5, within(1e-9));

                drain(rack, 4.7);
                assertThat(modules.coil(1, 16)).isTrue();

                modules.discrete(1, 40, true);
                await().atMost(SOON).until(() -> rack.board().contacts() == 1);
            }
            assertThat(modules.coil(1, 16))
                    .as("the load, after the service was stopped")
                    .isFalse();
        }
    }

    @Test
    void modules_behind_a_network_address_are_read_and_switched_by_their_page() throws Exception {
        BoardDocument page = BoardDocument.named("modbus.md");
        try (Modules modules = Modules.onNetwork()) {
            modules.holding(11, 100, 3_712_345 >>> 16);
            modules.holding(11, 101, 3_712_345 & 0xFFFF);
            modules.holding(11, 104, 0);
            modules.input(12, 8, 10_993);
            modules.input(12, 9, 65_535);
            try (ServedRack rack = ServedRack.of(
                    folder, page.yamlAfter(BOARD_IN_RACK_FILE), page.yamlAfter("second pair"), modules.address())) {
                await().atMost(SOON).until(() -> !Double.isNaN(rack.channel(0).volts()));
                assertThat(rack.channel(0).volts()).isCloseTo(3.712345, within(1e-9));
                assertThat(rack.channel(0).celsius())
                        .as("109.73 ohms, IEC 60751")
                        .isCloseTo(24.99, within(0.01));
                assertThat(rack.channel(1).celsius()).as("an open sensor").isNaN();
                drain(rack, 10);
                assertThat(modules.coil(11, 0)).isTrue();
            }
            assertThat(modules.coil(11, 0)).isFalse();
        }
    }

    private static void drain(ServedRack rack, double loadOhms) {
        rack.checkIn(loadOhms, true);
        await().atMost(SOON).until(() -> rack.passage().standing().contains(Wish.ASK_PUT_ON));
        rack.act(Act.PUT_ON);
        await().atMost(SOON).until(() -> rack.channel(0).loadApplied());
        assertThat(rack.passage().phase()).isEqualTo(Phase.DRAIN);
    }

    /** The board's end of its line. */
    private static final class Printer {
        private final PtyPort port;
        private long millis;

        Printer(PtyPort port) {
            this.port = port;
        }

        void isSwitchedOnAgain() {
            millis = 0;
        }

        void prints(String columns) throws IOException {
            millis += 100;
            says(millis + ";" + columns + "\r\n");
        }

        void says(String text) throws IOException {
            byte[] bytes = text.getBytes(ISO_8859_1);
            int written = 0;
            while (written < bytes.length) {
                written += port.write(bytes, written, bytes.length - written);
            }
        }
    }
}
