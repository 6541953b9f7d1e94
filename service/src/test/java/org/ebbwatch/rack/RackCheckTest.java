package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.Wiring;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.link.PtyPort;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class RackCheckTest {

    @Nested
    class Of_a_board_on_a_pseudo_terminal {
        @Test
        @EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
        void every_channel_is_read_once_and_no_load_is_touched()
                throws IOException, InterruptedException, RackFileFaulty {
            var sim = new SimBoard(
                    BoardSpec.build(
                                    "EB-1",
                                    List.of(
                                            ChannelSpec.switched(
                                                    CellSpec.build("A", NMC, 2.0)
                                                            .done(),
                                                    22),
                                            ChannelSpec.byHand(
                                                    CellSpec.build("B", NMC, 2.0)
                                                            .done(),
                                                    22)))
                            .thermometers(true, false, 0, false)
                            .done(),
                    1,
                    1,
                    200);
            try (SimRunner runner = new SimRunner(sim, PtyPort.open(), 1).start()) {
                List<ChannelLine> lines = check(runner.address(), "EB-1");
                assertThat(lines).extracting(ChannelLine::about).containsExactly("left 0", "left 1", "left 2");
                assertThat(lines).extracting(ChannelLine::tag).containsExactly("A-17", "cell", "ambient");
                assertThat(lines.get(0).volts()).matches("[34]\\.\\d{4} \\+- 0\\.\\d{4}");
                assertThat(lines.get(0).load()).isEqualTo("off");
                assertThat(lines).noneMatch(ChannelLine::isTrouble);
            }
        }

        @Test
        @EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
        void a_board_that_does_not_answer_is_told_with_what_to_do()
                throws IOException, InterruptedException, RackFileFaulty {
            try (PtyPort deaf = PtyPort.open()) {
                assertThat(check(deaf.address(), "EB-1", 300))
                        .singleElement()
                        .satisfies(line -> assertThat(line.state()).isEqualTo("not heard"))
                        .satisfies(line -> assertThat(line.toDo()).isNotEmpty());
            }
        }

        private static List<ChannelLine> check(String port, String serialNumber)
                throws InterruptedException, RackFileFaulty {
            return check(port, serialNumber, 60_000);
        }

        private static List<ChannelLine> check(String port, String serialNumber, long mostMillis)
                throws InterruptedException, RackFileFaulty {
            RackFile file = RackFile.parse(
                    """
                    boards: [{name: left, port: %s, serialNumber: %s}]
                    cells:
                      - {channel: 0, tag: A-17, chemistry: nmc, ratedAmpereHours: 2, loadOhms: 22, switched: true}
                    """
                            .formatted(port, serialNumber),
                    "rack.yaml",
                    Path.of("/nowhere"));
            List<BoardPort> ports = file.boards().stream()
                    .map(board ->
                            new BoardPort(board.name(), board.serialNumber(), board.port()::port, board.contacts()))
                    .toList();
            return new RackCheck(file, ports, new SystemHostClock()).read(mostMillis);
        }
    }

    @Nested
    class Of_one_channel {
        private static final double ROOM = 21;

        private static Scan scan(double volts, double celsius, boolean load, Suspicion suspect) {
            return new Scan(
                    1_000, volts, 0.004, 0.0001, Double.NaN, celsius, ROOM, Double.NaN, Double.NaN, load, suspect);
        }

        private static Scan scan(double volts, double celsius) {
            return scan(volts, celsius, false, Suspicion.NONE);
        }

        private static BoardBasis basis(ChannelRole role, Set<Ability> abilities) {
            Identity said = new Identity(
                    1,
                    ClockKind.CRYSTAL,
                    false,
                    false,
                    false,
                    1,
                    1_000,
                    0,
                    new Scales(100_000, 0, 1_000),
                    new Converter(-5_000, 50_000, 400_000, 500, 300_000),
                    0,
                    "EB-1",
                    "test",
                    Collections.nCopies(1, new ChannelIdentity(ChannelRole.CELL, abilities, 0)));
            return new BoardBasis(said, new Wiring(Map.of(0, role), Map.of(), Map.of()), List.of());
        }

        private static CellEntry cell(int channel, boolean switched) {
            return new CellEntry(
                    "left",
                    channel,
                    "A-17",
                    Chemistry.NMC,
                    2,
                    Optional.empty(),
                    22,
                    5,
                    Optional.empty(),
                    switched,
                    "careful");
        }

        static Stream<Arguments> matters() {
            return Stream.of(
                    Arguments.of(scan(3.7, 22), "ok"),
                    Arguments.of(scan(3.7, 45), "WARM"),
                    Arguments.of(scan(Double.NaN, 22), "no volts"),
                    Arguments.of(scan(5.0, 22, false, Suspicion.VOLTS_AT_RAIL), "at the end of its range"),
                    Arguments.of(scan(4.6, 22), "at the end of its range"),
                    Arguments.of(scan(-0.03, 22), "reversed"),
                    Arguments.of(scan(-0.022, 22), "low: empty, or a lead is off"),
                    Arguments.of(scan(3.7, 22, true, Suspicion.NONE), "its load is on"),
                    Arguments.of(scan(0.2, 22), "low: empty, or a lead is off"),
                    Arguments.of(scan(3.7, Double.NaN, false, Suspicion.SENSOR_OPEN), "sensor open"),
                    Arguments.of(scan(3.7, Double.NaN), "no temperature"),
                    Arguments.of(scan(3.7, 5), "far colder than the room"));
        }

        @ParameterizedTest
        @MethodSource("matters")
        void what_is_the_matter_is_told_with_what_to_do(Scan read, String state) {
            Set<Ability> all = Set.of(Ability.VOLTS, Ability.CELSIUS, Ability.LOAD_SWITCH);
            assertThat(ChannelCheck.lines("left", basis(ChannelRole.CELL, all), List.of(read), List.of(cell(0, true))))
                    .singleElement()
                    .satisfies(line -> assertThat(line.state()).isEqualTo(state))
                    .satisfies(line -> assertThat(line.isTrouble()).isEqualTo(!state.equals("ok")));
        }

        @Test
        void a_channel_that_cannot_serve_its_cell_is_told() {
            Set<Ability> plain = Set.of(Ability.VOLTS, Ability.CELSIUS);
            List<Scan> good = List.of(scan(3.7, 22));
            assertThat(state(basis(ChannelRole.AMBIENT, plain), good, cell(0, false)))
                    .isEqualTo("no cell channel: ambient");
            assertThat(state(basis(ChannelRole.CELL, plain), good, cell(0, true)))
                    .isEqualTo("has no load switch");
            assertThat(state(basis(ChannelRole.CELL, Set.of(Ability.VOLTS)), good, cell(0, false)))
                    .isEqualTo("has no temperature sensor");
            assertThat(ChannelCheck.lines("left", basis(ChannelRole.CELL, plain), good, List.of(cell(7, false))))
                    .last()
                    .satisfies(line -> assertThat(line.state()).contains("no such channel for the cell A-17"));
        }

        private static String state(BoardBasis basis, List<Scan> readings, CellEntry cell) {
            return ChannelCheck.lines("left", basis, readings, List.of(cell))
                    .get(0)
                    .state();
        }

        @Test
        void a_load_that_is_on_where_no_cell_is_named_is_told() {
            Set<Ability> all = Set.of(Ability.VOLTS, Ability.CELSIUS, Ability.LOAD_SWITCH);
            assertThat(ChannelCheck.lines(
                            "left",
                            basis(ChannelRole.CELL, all),
                            List.of(scan(3.7, 22, true, Suspicion.NONE)),
                            List.of()))
                    .singleElement()
                    .satisfies(line -> assertThat(line.isTrouble()).isTrue());
        }
    }
}
