package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.passage.Wiring;
import org.ebbwatch.rig.message.ChannelRole;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RackFileTest {

    private static final Path FOLDER = Path.of("/srv/rack");

    private static final String WHOLE =
            """
            storage: kept
            http:
              address: 0.0.0.0
              port: 9000
            procedure: strict
            boards:
              - name: left
                port: /dev/serial/by-id/usb-one
                baud: 57600
                serialNumber: EB-0001
              - name: right
                port: tcp:bench.example:4000
            cells:
              - board: left
                channel: 0
                tag: "0017"
                chemistry: nmc
                ratedAmpereHours: 2.6
                # alone
                loadOhms: 10
                loadTolerancePercent: 1
                leadOhms: 0.1
                switched: true
                procedure: careful
              - board: right
                channel: 0
                tag: B 2
                chemistry: lfp
                ratedAmpereHours: 20
                loadOhms: 4.7
                switched: false
            """;

    /** A file of one board with one cell, of which one line is replaced. */
    private static final String SMALL =
            """
            boards:
              - name: left
                port: COM3
            cells:
              - channel: 2
                tag: A1
                chemistry: nmc
                ratedAmpereHours: 2.6
                loadOhms: 10
                switched: true
            """;

    private static List<String> faults(String text) {
        return catchThrowableOfType(RackFileFaulty.class, () -> RackFile.parse(text, "rack.yaml", FOLDER))
                .faults();
    }

    private static RackFile parse(String text) throws RackFileFaulty {
        return RackFile.parse(text, "rack.yaml", FOLDER);
    }

    @Test
    void a_whole_file_is_read_as_it_stands() throws RackFileFaulty {
        RackFile rack = parse(WHOLE);
        assertThat(rack.storage()).isEqualTo(FOLDER.resolve("kept"));
        assertThat(rack.http()).isEqualTo(new HttpEntry("0.0.0.0", 9_000));
        assertThat(rack.boards())
                .containsExactly(
                        new BoardEntry(
                                "left",
                                new PortAddress.Serial("/dev/serial/by-id/usb-one", 57_600),
                                Optional.of("EB-0001")),
                        new BoardEntry("right", new PortAddress.Tcp("bench.example", 4_000), Optional.empty()));
        assertThat(rack.cells())
                .containsExactly(
                        new CellEntry(
                                "left",
                                0,
                                "0017",
                                Chemistry.NMC,
                                2.6,
                                Optional.empty(),
                                10,
                                1,
                                Optional.empty(),
                                true,
                                "careful"),
                        new CellEntry(
                                "right",
                                0,
                                "B 2",
                                Chemistry.LFP,
                                20,
                                Optional.empty(),
                                4.7,
                                5,
                                Optional.empty(),
                                false,
                                "strict"));
    }

    @Test
    void what_is_left_out_has_the_usual_value() throws RackFileFaulty {
        RackFile rack = parse(SMALL);
        assertThat(rack.storage()).isEqualTo(FOLDER.resolve("data"));
        assertThat(rack.http()).isEqualTo(new HttpEntry("127.0.0.1", 8_710));
        assertThat(rack.boards())
                .containsExactly(new BoardEntry("left", new PortAddress.Serial("COM3", 115_200), Optional.empty()));
        assertThat(rack.cells())
                .containsExactly(new CellEntry(
                        "left",
                        2,
                        "A1",
                        Chemistry.NMC,
                        2.6,
                        Optional.empty(),
                        10,
                        5,
                        Optional.empty(),
                        true,
                        "careful"));
    }

    @Test
    void a_file_is_read_from_disk_with_its_folder(@TempDir Path folder) throws IOException, RackFileFaulty {
        Path file = Files.writeString(folder.resolve("rack.yaml"), SMALL);
        assertThat(RackFile.read(file).storage()).isEqualTo(folder.resolve("data"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "channel: 2         | channel: 64       | rack.yaml:5: channel \"64\" is not allowed; channel is a whole number from 0 to 63",
                "channel: 2         | channel: two      | rack.yaml:5: channel \"two\" is not allowed; channel is a whole number from 0 to 63",
                "chemistry: nmc     | chemistry: lipo   | rack.yaml:7: chemistry \"lipo\" is not known; chemistry is one of nmc, nca, lco, lmo, lfp",
                "ratedAmpereHours: 2.6 | ratedAmpereHours: '2,6' | rack.yaml:8: ratedAmpereHours \"2,6\" is not allowed; ratedAmpereHours is a number from 0.01 to 1000, with a point and without its unit",
                "loadOhms: 10       | loadOhms: 10 ohm  | rack.yaml:9: loadOhms \"10 ohm\" is not allowed; loadOhms is a number from 0.01 to 100000, with a point and without its unit",
                "loadOhms: 10       | loadTolerancePercent: 20.1 | rack.yaml:9: loadTolerancePercent \"20.1\" is not allowed; loadTolerancePercent is a number from 0 to 20, with a point and without its unit",
                "loadOhms: 10       | loadOhms: .nan    | rack.yaml:9: loadOhms \".nan\" is not allowed; loadOhms is a number from 0.01 to 100000, with a point and without its unit",
                "switched: true     | switched: maybe   | rack.yaml:10: switched \"maybe\" is not known; switched is one of true, false",
                "port: COM3         | port: tcp:4000    | rack.yaml:3: port \"tcp:4000\" is not an address; port is the path of a serial port or tcp:HOST:PORT; `ebbwatch ports` lists the ports there are",
                "tag: A1            | tag: ''           | rack.yaml:6: tag has no value; tag is 1 to 40 letters, digits, spaces, points, dashes and underscores, and begins with a letter or digit",
                "tag: A1            | tag: =2+3         | rack.yaml:6: tag \"=2+3\" is not allowed; tag is 1 to 40 letters, digits, spaces, points, dashes and underscores, and begins with a letter or digit",
                "tag: A1            | tagg: A1          | rack.yaml:6: tagg is not a key of a cell; did you mean tag? Its keys are board, channel, tag, chemistry, ratedAmpereHours, string, seriesCells, loadOhms, loadTolerancePercent, switched, procedure, loadWatts, loadSensorChannel, leadOhms, leadMetres, leadSquareMillimetres",
            })
    void a_fault_is_told_with_its_line_and_what_is_allowed(String line, String faulty, String told) {
        assertThat(SMALL).contains(line);
        assertThat(faults(SMALL.replace(line, faulty))).contains(told);
    }

    @ParameterizedTest
    @CsvSource({"channel: 2, chanel: 2", "switched: true, swiched: true", "boards:, bords:"})
    void a_misspelt_key_is_told_once_and_not_missed_as_well(String key, String misspelt) {
        assertThat(faults(SMALL.replace(key, misspelt)))
                .filteredOn(fault -> fault.contains(misspelt.split(":", -1)[0] + " is not a key"))
                .hasSize(1);
        assertThat(faults(SMALL.replace(key, misspelt)))
                .noneMatch(fault ->
                        fault.contains("lacks " + key.split(":", -1)[0]) || fault.contains("at least one board"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "signOfLife: {urll: 'https://life.example'}",
                "signOfLife: {urlEnvironmnt: LIFE}",
                "alarms: {outlets: [{webhok: {url: 'https://a.example'}}]}",
                "alarms: {outlets: [{webhook: {urlEnvironmnt: HOOK}}]}",
                "alarms: {outlets: [{webhook: {ur: 'https://a.example'}}]}",
                "alarms: {outlets: [{mail: {hst: mail.example, from: a@b.example, to: c@d.example}}]}",
                "alarms: {outlets: [{mail: {host: m.example, user: u, paswordFile: f, from: a@b.example, to: c@d.example}}]}"
            })
    void a_misspelt_key_anywhere_is_told_once(String misspelt) {
        assertThat(faults(misspelt + "\n" + SMALL)).singleElement().asString().contains("did you mean");
    }

    @Test
    void a_faulty_cell_of_a_string_and_a_nameless_board_are_told_once() {
        assertThat(faults(string("channel: 3, string: P1", "channel: 4, string: P1")
                        .replaceFirst("tag", "tagg")))
                .singleElement()
                .asString()
                .contains("did you mean tag?");
        assertThat(faults(WHOLE.replace("name: right", "nam: right")))
                .singleElement()
                .asString()
                .contains("did you mean name?");
    }

    @Test
    void a_missing_key_is_told_where_nothing_looks_like_it() {
        assertThat(faults(SMALL.replace("channel: 2", "leadOhms: 0.1")))
                .singleElement()
                .asString()
                .contains("a cell lacks channel");
    }

    @ParameterizedTest
    @CsvSource({
        "chemestry, chemistry",
        "ratedampereHours, ratedAmpereHours",
        "loadohm, loadOhms",
        "leadTolerancePercent, loadTolerancePercent"
    })
    void a_mistyped_key_is_guessed(String typed, String meant) {
        assertThat(faults(SMALL + "    " + typed + ": 1\n"))
                .singleElement()
                .asString()
                .startsWith("rack.yaml:11: " + typed + " is not a key of a cell; did you mean " + meant + "?");
    }

    @Test
    void a_key_that_resembles_none_is_not_guessed() {
        assertThat(faults(SMALL + "    colour: red\n"))
                .singleElement()
                .asString()
                .startsWith("rack.yaml:11: colour is not a key of a cell. Its keys are");
    }

    @Nested
    class what_may_be_there_once {

        private static final String SECOND_CELL =
                """
                  - channel: 3
                    tag: A2
                    chemistry: nmc
                    ratedAmpereHours: 2.6
                    loadOhms: 10
                    switched: true
                """;

        @Test
        void a_cell_on_a_channel() {
            assertThat(faults(SMALL + SECOND_CELL.replace("channel: 3", "channel: 2")))
                    .containsExactly("rack.yaml:11: channel 2 of board left holds a cell already, in line 5");
        }

        @Test
        void a_tag() {
            assertThat(faults(SMALL + SECOND_CELL.replace("A2", "A1")))
                    .containsExactly("rack.yaml:12: the tag A1 is given to a cell already, in line 6");
        }

        @Test
        void a_boards_name_and_a_port() {
            assertThat(faults("boards:\n  - {name: a, port: COM3}\n  - {name: a, port: COM3}\n"))
                    .containsExactly(
                            "rack.yaml:3: the board a is named already, in line 2",
                            "rack.yaml:3: the port COM3 is given to a board already, in line 2");
        }

        @Test
        void a_key() {
            assertThat(faults(SMALL + "    switched: false\n"))
                    .containsExactly("rack.yaml:11: switched is given twice");
        }
    }

    @Test
    void every_fault_of_a_file_is_told_at_once_in_the_order_of_lines() {
        String text = SMALL.replace("nmc", "gold").replace("COM3", "tcp:x").replace("    switched: true\n", "");
        assertThat(faults(text))
                .hasSize(3)
                .extracting(fault -> fault.substring(0, 12))
                .containsExactly("rack.yaml:3:", "rack.yaml:5:", "rack.yaml:7:");
    }

    @Test
    void a_cell_of_an_unknown_board_is_told_which_boards_there_are() {
        assertThat(faults(WHOLE.replace("board: right", "board: rigth")))
                .containsExactly("rack.yaml:25: board \"rigth\" is not known; board is one of left, right");
    }

    @Test
    void with_two_boards_a_cell_must_name_its_own() {
        assertThat(faults(WHOLE.replace("  - board: right\n    channel", "  - channel")))
                .containsExactly("rack.yaml:25: a cell lacks board; board is one of left, right");
    }

    @ParameterizedTest
    @ValueSource(strings = {"careful", "strict", "large", "damaged"})
    void a_cell_is_judged_by_the_procedure_it_names(String procedure) throws RackFileFaulty {
        assertThat(parse(SMALL + "    procedure: " + procedure + "\n").cells())
                .extracting(CellEntry::procedure)
                .containsExactly(procedure);
        assertThat(parse("procedure: " + procedure + "\n" + SMALL).cells())
                .extracting(CellEntry::procedure)
                .containsExactly(procedure);
    }

    @Test
    void the_procedure_for_iron_phosphate_is_refused_to_other_cells_and_told_at_the_cell() throws RackFileFaulty {
        assertThat(faults("procedure: lfp\n" + SMALL))
                .containsExactly(
                        "rack.yaml:6: the procedure lfp is for iron phosphate cells, and this is none; take careful,"
                                + " strict, large or damaged");
        assertThat(parse("procedure: lfp\n" + SMALL.replace("nmc", "lfp")).cells())
                .extracting(CellEntry::procedure)
                .containsExactly("lfp");
    }

    @Test
    void the_procedure_for_large_cells_is_refused_to_a_small_one() {
        assertThat(faults(SMALL.replace("2.6", "1.9") + "    procedure: large\n"))
                .singleElement()
                .asString()
                .startsWith("rack.yaml:11: the procedure large is for cells of 2 Ah and more;");
    }

    @Test
    void several_cells_in_series_on_one_channel_are_refused() {
        assertThat(faults(WHOLE.replace("# alone", "seriesCells: 3")))
                .singleElement()
                .asString()
                .contains("rack.yaml:19: seriesCells is not used any more", "the same string: NAME");
    }

    private static String string(String... cells) {
        StringBuilder text = new StringBuilder("boards: [{name: left, port: /dev/ttyACM0}]\ncells:\n");
        for (int i = 0; i < cells.length; i++) {
            text.append("  - {tag: A")
                    .append(i)
                    .append(", chemistry: nmc, ratedAmpereHours: 2, switched: true, loadOhms: 22, ")
                    .append(cells[i])
                    .append("}\n");
        }
        return text.toString();
    }

    @Test
    void cells_that_name_the_same_string_are_one_on_their_channels() throws RackFileFaulty {
        RackFile file = parse(string(
                "channel: 4, string: P1",
                "channel: 3, string: P1",
                "channel: 5, string: P2",
                "channel: 6, string: P2",
                "channel: 7, string: P2",
                "channel: 8"));

        Optional<CellString> one = Optional.of(new CellString("P1", 3, 2));
        Optional<CellString> other = Optional.of(new CellString("P2", 5, 3));
        assertThat(file.cells())
                .extracting(CellEntry::string)
                .containsExactly(one, one, other, other, other, Optional.empty());
    }

    @Test
    void a_string_that_does_not_hang_together_is_refused() {
        assertThat(faults(string("channel: 3, string: P1")))
                .singleElement()
                .asString()
                .contains("one cell only");
        assertThat(faults(string("channel: 3, string: P1", "channel: 5, string: P1")))
                .singleElement()
                .asString()
                .contains("rack.yaml:4", "neighbouring channels", "channel 4");
        assertThat(faults(string("channel: 3, string: P1", "channel: 4, string: P1")
                        .replaceFirst("22", "10")))
                .singleElement()
                .asString()
                .contains("one load");
        assertThat(faults(string("channel: 3, string: P1, loadTolerancePercent: 1", "channel: 4, string: P1")))
                .singleElement()
                .asString()
                .contains("one load", "the same loadTolerancePercent");
    }

    @Nested
    class Wired {
        @Test
        void thermometers_load_sensors_and_leads_are_told_by_channel() throws RackFileFaulty {
            RackFile rack =
                    parse(SMALL.replace("port: COM3", "port: COM3\n    ambientChannel: 14\n    watchChannels: [12, 13]")
                            .replace("loadOhms: 10", "loadOhms: 10\n    loadSensorChannel: 11\n    leadOhms: 0.05"));
            assertThat(rack.wirings())
                    .containsExactly(Map.entry(
                            "left",
                            new Wiring(
                                    Map.of(
                                            11, ChannelRole.BANK,
                                            12, ChannelRole.WATCH,
                                            13, ChannelRole.WATCH,
                                            14, ChannelRole.AMBIENT),
                                    Map.of(2, 11),
                                    Map.of(2, 0.005))));
            assertThat(parse(SMALL).wirings()).isEmpty();
        }

        /** Copper at 20 degC: 1 m of 0.5 mm2 has 34.5 milliohms (computed from 1.7241e-8 ohm metres, IACS). AWG 20 is 0.518 mm2: 33.3. */
        @Test
        void leads_of_a_length_and_a_section_have_the_resistance_of_their_copper() throws RackFileFaulty {
            assertThat(WiringReader.ohms(1, 0.5)).isCloseTo(0.03448, within(1e-5));
            assertThat(WiringReader.ohms(1, 0.5176)).isCloseTo(0.0333, within(5e-5));
            RackFile rack = parse(
                    SMALL.replace("loadOhms: 10", "loadOhms: 10\n    leadMetres: 1.5\n    leadSquareMillimetres: 0.5"));
            assertThat(rack.wirings().get("left").leadShares().get(2)).isCloseTo(0.0103446, within(1e-6));
            assertThat(faults(SMALL.replace("loadOhms: 10", "loadOhms: 10\n    leadMetres: 1.5")))
                    .containsExactly(
                            "rack.yaml:10: leadMetres needs leadSquareMillimetres beside it: the length of one lead"
                                    + " and its copper's cross-section");
        }

        @Test
        void a_channel_with_two_things_on_it_is_refused() {
            assertThat(faults(SMALL.replace("port: COM3", "port: COM3\n    ambientChannel: 2")))
                    .containsExactly("rack.yaml:6: channel 2 of board left is wired already, in line 4, as AMBIENT;"
                            + " each channel has one thing on it");
        }

        @Test
        void a_load_that_a_full_cell_overheats_is_refused() {
            assertThat(faults(SMALL.replace("loadOhms: 10", "loadOhms: 10\n    loadWatts: 1.8")))
                    .singleElement()
                    .asString()
                    .startsWith("rack.yaml:10: 4.20 V turn up to 1.86 W into heat in 10.0 ohms, loadWatts is 1.8");
            assertThat(faults(
                            string("channel: 3, string: P1, loadWatts: 3.3", "channel: 4, string: P1, loadWatts: 3.3")))
                    .singleElement()
                    .asString()
                    .contains("8.40 V turn up to 3.38 W");
        }
    }

    @Test
    void the_page_may_be_reached_by_further_names() throws RackFileFaulty {
        String http = "http:\n  names: [rack.example, shed-2]\n";

        assertThat(parse(http + SMALL).http())
                .isEqualTo(new HttpEntry("127.0.0.1", 8_710, List.of("rack.example", "shed-2")));
        assertThat(faults(http.replace("shed-2", "http://shed") + SMALL))
                .containsExactly("rack.yaml:2: a name is that of a host as it stands in the address bar, without port,"
                        + " such as rack.example");
    }

    @Test
    void a_network_board_has_no_baud() {
        assertThat(faults(SMALL.replace("port: COM3", "port: tcp:x:1\n    baud: 9600")))
                .containsExactly("rack.yaml:4: baud is for a serial port; leave it out with tcp:HOST:PORT");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''             | rack.yaml:1: the rack file is empty",
                "'boards: [a'   | rack.yaml:1: this is not YAML",
                "'- a'          | rack.yaml:1: a rack file is written as keys and values",
                "'boards: 3'    | rack.yaml:1: boards is a list",
                "'boards: [3]'  | rack.yaml:1: a board is written as keys and values",
                "'cells: []'    | rack.yaml:1: a rack has at least one board"
            })
    void what_is_no_rack_file_is_told(String text, String told) {
        assertThat(faults(text)).first().asString().startsWith(told);
    }

    @Test
    void the_example_in_the_documentation_is_a_rack_file() throws IOException, RackFileFaulty {
        String page = Files.readString(Path.of("..", "docs", "rack-file.md"));
        String example = page.substring(page.indexOf("```yaml") + 7, page.indexOf("```", page.indexOf("```yaml") + 7));
        RackFile rack = parse(example);
        assertThat(rack.boards()).hasSize(2);
        assertThat(rack.cells()).hasSize(2);
        assertThat(page).contains(List.of("`" + String.join("`, `", "nmc", "nca", "lco", "lmo", "lfp") + "`"));
    }
}
