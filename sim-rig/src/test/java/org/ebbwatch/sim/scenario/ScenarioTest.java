package org.ebbwatch.sim.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.Relaxation;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScenarioTest {
    private static final String FULL =
            """
            seed: 42
            speed: 600
            interval: 500ms
            boards:
              - serialNumber: SIM-A
                firmware: test
                bootNumber: 9
                hostTimeout: 45s
                measuresAmperes: true
                checksLeads: false
                buzzer: false
                loadRelay: false
                contactInputs: 2
                watches: 3
                bank: false
                converter: {unipolar: true, voltsNoiseCounts: 2, offsetMicrovolts: 1000}
                ambient: {celsius: 18, swingKelvin: 6, startHour: 22}
                channels:
                  - cell:
                      tag: alpha
                      chemistry: lfp
                      ratedAmpereHours: 1.5
                      healthPercent: 70
                      spreadPercent: 4
                      stateOfChargePercent: 30
                      milliohms: 80
                      relaxation: diffusion
                      diffusionSeconds: 6000
                      slowSharePercent: 3
                      slowHours: 7
                      cutOffVolts: 2.3
                      arrival: disconnected
                      reversed: true
                    loadOhms: 22
                    loadTolerancePercent: 5
                    leadMilliohms: 100
                    fourWire: false
                  - cell: {tag: beta, chemistry: nmc, ratedAmpereHours: 2.6, slowSeconds: 900, fastMilliohms: 33}
                    loadOhms: 10
                    handLoaded: true
                  - cell: {tag: gamma, chemistry: nmc, ratedAmpereHours: 2.6}
                    repeat: 3
                strings:
                  - {firstChannel: 2, cells: 3, loadOhms: 33, switched: false}
                faults:
                  - {kind: warming, channel: 1, after: bonded, offset: 1h 30min, occurrence: 2, lasts: 2d, watts: 0.7}
                  - {kind: silent, at: 36h, lasts: 10s}
            """;

    private static Scenario parse(String yaml) throws ScenarioException {
        return Scenario.parse(yaml, "rack.yaml");
    }

    @Nested
    class A_full_scenario {
        @Test
        void is_read_as_it_stands() throws ScenarioException {
            Scenario scenario = parse(FULL);
            BoardSpec board = scenario.boards().get(0);

            assertThat(scenario.seed()).isEqualTo(42);
            assertThat(scenario.speed()).isEqualTo(600);
            assertThat(scenario.intervalMillis()).isEqualTo(500);
            assertThat(board.firmware()).isEqualTo("test");
            assertThat(board.bootNumber()).isEqualTo(9);
            assertThat(board.hostTimeoutMillis()).isEqualTo(45_000);
            assertThat(board.measuresAmperes()).isTrue();
            assertThat(board.checksLeads()).isFalse();
            assertThat(board.buzzer()).isFalse();
            assertThat(board.loadRelay()).isFalse();
            assertThat(board.contactInputs()).isEqualTo(2);
            assertThat(board.converter()).isEqualTo(new ConverterSpec(true, 2, 1.5, 1000, 500, 0.3));
            assertThat(board.ambient()).isEqualTo(new AmbientSpec(18, 6, 22));
            assertThat(board.channels())
                    .extracting(ChannelSpec::role)
                    .containsExactly(
                            ChannelRole.CELL,
                            ChannelRole.CELL,
                            ChannelRole.CELL,
                            ChannelRole.CELL,
                            ChannelRole.CELL,
                            ChannelRole.AMBIENT,
                            ChannelRole.DUMMY,
                            ChannelRole.WATCH,
                            ChannelRole.WATCH,
                            ChannelRole.WATCH);
            assertThat(board.strings()).containsExactly(new StringSpec(2, 3, 33, false));
        }

        @Test
        void has_its_cells_and_loads() throws ScenarioException {
            BoardSpec board = parse(FULL).boards().get(0);
            ChannelSpec first = board.channels().get(0);
            CellSpec cell = first.cell().orElseThrow();

            assertThat(cell.tag()).isEqualTo("alpha");
            assertThat(cell.chemistry()).isEqualTo(Chemistry.LFP);
            assertThat(cell.ratedAmpereHours()).isEqualTo(1.5);
            assertThat(cell.health()).isEqualTo(0.7);
            assertThat(cell.spread()).isEqualTo(0.04);
            assertThat(cell.stateOfCharge()).isEqualTo(0.3);
            assertThat(cell.ohms()).isEqualTo(0.08);
            assertThat(cell.relaxation()).isEqualTo(new Relaxation.Diffusion(0.12, 20, 6000));
            assertThat(cell.slowShare()).isEqualTo(new SlowShare(0.03, 7));
            assertThat(cell.cutOffVolts()).isEqualTo(2.3);
            assertThat(cell.arrival()).isEqualTo(Arrival.DISCONNECTED);
            assertThat(cell.reversed()).isTrue();
            assertThat(first.loadOhms()).isEqualTo(22);
            assertThat(first.loadTolerance()).isEqualTo(0.05);
            assertThat(first.leadOhms()).isEqualTo(0.1);
            assertThat(first.switched()).isTrue();
            assertThat(first.fourWire()).isFalse();

            ChannelSpec second = board.channels().get(1);
            assertThat(second.handLoaded()).isTrue();
            assertThat(second.switched()).isFalse();
            assertThat(second.cell().orElseThrow().relaxation())
                    .isEqualTo(new Relaxation.Exponentials(0.033, 17, 2 * 0.15 / 2.6, 900));
            assertThat(board.channels().get(4).cell().orElseThrow().tag()).isEqualTo("gamma-3");
        }

        @Test
        void has_its_faults() throws ScenarioException {
            assertThat(parse(FULL).boards().get(0).faults())
                    .containsExactly(
                            new Fault(
                                    FaultKind.WARMING,
                                    1,
                                    new Trigger(Happening.BONDED, 2, 5_400_000),
                                    172_800_000,
                                    Map.of("watts", 0.7)),
                            Fault.onBoard(FaultKind.SILENT, Trigger.at(129_600_000))
                                    .lasting(10_000));
        }
    }

    @Test
    void a_board_that_lists_no_channels_has_sixteen_cells_and_three_thermometers() throws ScenarioException {
        BoardSpec board = parse("boards: [{serialNumber: A}]").boards().get(0);

        assertThat(board.channels()).hasSize(19);
        assertThat(board.channels().stream().filter(channel -> channel.cell().isPresent()))
                .hasSize(16);
    }

    /** Each complaint names file and line, what is wrong and what is allowed. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed: 600 | speeed: 600 | rack.yaml:2: unknown key 'speeed' in the scenario; did you mean 'speed'?",
                "chemistry: lfp | chemisty: lfp | rack.yaml:21: unknown key 'chemisty' in 'cell'; did you mean 'chemistry'?",
                "chemistry: lfp | chemistry: lpf | rack.yaml:21: 'chemistry' is 'lpf'; did you mean 'lfp'?; allowed is",
                "speed: 600 | speed: fast | rack.yaml:2: 'speed' is 'fast', allowed is a whole number from 1 to 65535",
                "interval: 500ms | interval: 500 | rack.yaml:3: 'interval' is no duration; allowed is a number with ms, s, min, h or d",
                "interval: 500ms | interval: 2min | rack.yaml:1: intervalMillis is 120000, allowed is 10 to 60000",
                "loadOhms: 22 | loadOhms: -1 | rack.yaml:34: 'loadOhms' is '-1', allowed is a number from 0.01 to 1000000",
                "healthPercent: 70 | healthPercent: NaN | rack.yaml:23: 'healthPercent' is 'NaN', allowed is a number from 1 to 150",
                "buzzer: false | buzzer: no | rack.yaml:11: 'buzzer' is 'no', allowed is true or false",
                "kind: silent, | kind: silnet, | rack.yaml:47: 'kind' is 'silnet'; did you mean 'silent'?",
                "kind: silent, | kind: silent, watts: 3, | rack.yaml:47: unknown key 'watts' in a fault",
                "watts: 0.7 | wats: 0.7 | rack.yaml:46: unknown key 'wats' in a fault; did you mean 'watts'?",
                "kind: silent, | kind: silent, channel: 2, | rack.yaml:47: silent befalls the whole board",
                "channel: 1, | channel: 12, | rack.yaml:5: warming is on channel 12, allowed is 0 to 9",
                "at: 36h | offset: 36h | rack.yaml:47: a fault needs either 'at'",
                "slowHours: 7 | ratedAmpereHours: 7 | rack.yaml:30: key 'ratedAmpereHours' stands twice in 'cell'",
                "diffusionSeconds: 6000 | slowSeconds: 6000 | rack.yaml:28: 'slowSeconds' does not go with relaxation diffusion",
                "tag: alpha | # alpha | rack.yaml:21: 'tag' is missing",
                "firstChannel: 2 | firstChannel: 0 | rack.yaml:5: channel 0 belongs to a string and may have no load of its own",
                "seed: 42 | seed: [ | rack.yaml:",
            })
    void what_is_wrong_is_named_with_its_line(String right, String wrong, String complaint) {
        assertThat(FULL).contains(right);
        assertThatThrownBy(() -> parse(FULL.replace(right, wrong)))
                .isInstanceOf(ScenarioException.class)
                .hasMessageStartingWith(complaint);
    }

    @Test
    void what_is_no_scenario_at_all_is_named_too() {
        assertThatThrownBy(() -> parse("")).hasMessage("rack.yaml:1: the file is empty");
        assertThatThrownBy(() -> parse("hello")).hasMessageStartingWith("rack.yaml:1: the scenario must be a mapping");
        assertThatThrownBy(() -> parse("seed: 1")).hasMessage("rack.yaml:1: 'boards' must list at least one board");
        assertThatThrownBy(() -> parse("boards: 3")).hasMessage("rack.yaml:1: 'boards' must be a list");
        assertThatThrownBy(() -> parse("boards: [{serialNumber: A}, {serialNumber: A}]"))
                .hasMessage("rack.yaml:1: two boards have the serial number A");
        assertThatThrownBy(() -> parse("a: [1\nb: 2")).hasMessageStartingWith("rack.yaml:2: not YAML: ");
    }

    @ParameterizedTest
    @CsvSource({"36h, 129600000", "90min, 5400000", "10s, 10000", "250ms, 250", "1.5d, 129600000", "1h 30min, 5400000"})
    void durations_have_units(String text, long millis) {
        assertThat(Durations.millis(text)).hasValue(millis);
    }

    @ParameterizedTest
    @CsvSource({"36", "h", "-3s", "10 parsecs", "1h 3", "''", "5mins"})
    void anything_else_is_no_duration(String text) {
        assertThat(Durations.millis(text)).isEmpty();
    }
}
