package org.ebbwatch.rack;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Reads a rack file key by key, and goes on after a fault to find the others. */
final class RackFileReader {

    private static final List<String> RACK_KEYS = List.of(
            "storage", "database", "http", "alarms", "morningReport", "signOfLife", "procedure", "boards", "cells");
    private static final List<String> HTTP_KEYS = List.of("address", "port", "names");
    private static final List<String> BOARD_KEYS = WayReader.joined(
            List.of("name", "port", "baud", "serialNumber", "profile", "contacts"), WiringReader.BOARD_KEYS);
    private static final List<String> CELL_KEYS = WayReader.joined(
            List.of(
                    "board",
                    "channel",
                    "tag",
                    "chemistry",
                    "ratedAmpereHours",
                    "string",
                    "seriesCells",
                    "loadOhms",
                    "loadTolerancePercent",
                    "switched",
                    "procedure"),
            WiringReader.CELL_KEYS);
    private static final List<String> CHEMISTRIES =
            Arrays.stream(Chemistry.values()).map(Chemistry::key).toList();

    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,39}");
    private static final String NAME_ALLOWED =
            " is 1 to 40 letters, digits, spaces, points, dashes and underscores, and begins with a letter or digit";
    private static final Pattern HOST_NAME = Pattern.compile("[A-Za-z0-9]([A-Za-z0-9.-]{0,250}[A-Za-z0-9])?");
    private static final Pattern SERIAL_NUMBER = Pattern.compile("[ -~]{1,32}");

    private static final HttpEntry USUAL_HTTP = new HttpEntry("127.0.0.1", 8710);
    private static final int HIGHEST_CHANNEL = 63;
    private static final double USUAL_TOLERANCE_PERCENT = 100 * LoadTolerance.USUAL.share();

    private final Faults faults;
    private final Path folder;
    private final List<BoardEntry> boards = new ArrayList<>();
    private final List<CellEntry> cells = new ArrayList<>();
    private final StringReader strings = new StringReader();
    private final ContactReader contacts;
    private final WiringReader wiring;
    private boolean namesMissing;
    private final Map<String, Integer> boardLines = new LinkedHashMap<>();
    private final Map<String, Integer> portLines = new HashMap<>();
    private final Map<String, Integer> tagLines = new HashMap<>();
    private final Map<String, Integer> cellLines = new HashMap<>();

    RackFileReader(Faults faults, Path folder) {
        this.faults = faults;
        this.folder = folder;
        this.contacts = new ContactReader(faults);
        this.wiring = new WiringReader(faults);
    }

    RackFile read(String text) throws RackFileFaulty {
        YamlMapping rack = YamlRoot.of(text, "rack file", RACK_KEYS, faults);
        Path storage = folder.resolve(
                rack.has("storage")
                        ? rack.text("storage", "storage is a folder").orElse("data")
                        : "data");
        Optional<DatabaseEntry> database = rack.node("database").flatMap(new DatabaseReader(faults, folder)::read);
        HttpEntry http = rack.node("http").map(this::http).orElse(USUAL_HTTP);
        AlarmEntry alarms = rack.node("alarms")
                .map(new AlarmEntryReader(faults, folder)::read)
                .orElse(AlarmEntry.USUAL);
        var mornings = new MorningEntryReader(faults);
        Optional<MorningEntry> morning = rack.node("morningReport")
                .flatMap(node -> mornings.morning(
                        node, alarms.outlets().stream().map(OutletEntry::name).toList()));
        Optional<LifeEntry> life = rack.node("signOfLife").flatMap(mornings::life);
        String procedure = procedure(rack, RackFile.PROCEDURES.get(0));
        if (rack.list("boards").isEmpty() && !rack.isMisspelt("boards")) {
            rack.fault(
                    "boards", "a rack has at least one board under boards; `ebbwatch ports` lists the ports there are");
        }
        rack.list("boards").forEach(this::board);
        rack.list("cells").forEach(node -> cell(node, procedure));
        List<CellEntry> strung = strings.strung(cells);
        faults.throwIfAny();
        return new RackFile(storage, database, http, alarms, morning, life, boards, strung, wiring.wirings());
    }

    private HttpEntry http(Node node) {
        YamlMapping http = new YamlMapping(node, "http", HTTP_KEYS, faults);
        String address = http.has("address")
                ? http.text("address", "address is one of this machine's").orElse(USUAL_HTTP.address())
                : USUAL_HTTP.address();
        int port = http.has("port") ? http.whole("port", 1, 65_535).orElse(USUAL_HTTP.port()) : USUAL_HTTP.port();
        List<String> names = new ArrayList<>();
        for (Node each : http.list("names")) {
            if (each instanceof ScalarNode scalar
                    && HOST_NAME.matcher(scalar.getValue()).matches()) {
                names.add(scalar.getValue());
            } else {
                faults.add(
                        Faults.line(each),
                        "a name is that of a host as it stands in the address bar, without port, such as rack.example");
            }
        }
        return new HttpEntry(address, port, names);
    }

    private static String procedure(YamlMapping mapping, String usual) {
        return mapping.has("procedure")
                ? mapping.choice("procedure", RackFile.PROCEDURES).orElse(usual)
                : usual;
    }

    private Optional<String> name(YamlMapping mapping, String key) {
        Optional<String> name = mapping.text(key, key + NAME_ALLOWED);
        if (name.isPresent() && !NAME.matcher(name.get()).matches()) {
            mapping.fault(key, key + " \"" + name.get() + "\" is not allowed; " + key + NAME_ALLOWED);
            return Optional.empty();
        }
        return name;
    }

    private void board(Node node) {
        YamlMapping board = new YamlMapping(node, "a board", BOARD_KEYS, faults);
        Optional<String> name = name(board, "name");
        name.ifPresent(given -> first(boardLines, given, board, "name", "the board " + given + " is named"));
        namesMissing |= name.isEmpty();
        wiring.board(board, name.orElse(""));
        OptionalInt baud =
                board.has("baud") ? board.whole("baud", 1_200, 4_000_000) : OptionalInt.of(PortAddress.USUAL_BAUD);
        String allowed =
                "port is the path of a serial port or tcp:HOST:PORT; `ebbwatch ports` lists the ports there are";
        Optional<String> port = board.text("port", allowed);
        port.ifPresent(given -> first(portLines, given, board, "port", "the port " + given + " is given to a board"));
        Optional<PortAddress> address =
                port.flatMap(given -> PortAddress.parse(given, baud.orElse(PortAddress.USUAL_BAUD)));
        if (port.isPresent() && address.isEmpty()) {
            board.fault("port", "port \"" + port.get() + "\" is not an address; " + allowed);
        }
        if (address.isPresent() && address.get() instanceof PortAddress.Tcp && board.has("baud")) {
            board.fault("baud", "baud is for a serial port; leave it out with tcp:HOST:PORT");
        }
        Optional<String> serialNumber = serialNumber(board);
        if (name.isPresent() && address.isPresent()) {
            boards.add(new BoardEntry(name.get(), address.get(), serialNumber, contacts.read(board), profile(board)));
        }
    }

    private Optional<Path> profile(YamlMapping board) {
        return board.has("profile")
                ? board.text("profile", "profile is the path of a profile file, from the rack file's own folder")
                        .map(folder::resolve)
                : Optional.empty();
    }

    private static Optional<String> serialNumber(YamlMapping board) {
        if (!board.has("serialNumber")) {
            return Optional.empty();
        }
        String allowed = "serialNumber is 1 to 32 characters of ASCII, as the board states it";
        Optional<String> serialNumber = board.text("serialNumber", allowed);
        if (serialNumber.isPresent()
                && !SERIAL_NUMBER.matcher(serialNumber.get()).matches()) {
            board.fault("serialNumber", allowed);
        }
        return serialNumber;
    }

    private void cell(Node node, String usualProcedure) {
        YamlMapping cell = new YamlMapping(node, "a cell", CELL_KEYS, faults);
        Optional<String> board = boardOf(cell);
        OptionalInt channel = cell.whole("channel", 0, HIGHEST_CHANNEL);
        Optional<String> tag = name(cell, "tag");
        tag.ifPresent(given -> first(tagLines, given, cell, "tag", "the tag " + given + " is given to a cell"));
        Optional<Chemistry> chemistry = cell.choice("chemistry", CHEMISTRIES).flatMap(Chemistry::ofKey);
        OptionalDouble ratedAmpereHours = cell.number("ratedAmpereHours", 0.01, 1_000);
        refuseSeries(cell);
        Optional<String> string = cell.has("string") ? name(cell, "string") : Optional.empty();
        OptionalDouble loadOhms = cell.number("loadOhms", 0.01, 100_000);
        double tolerancePercent =
                numberOr(cell, "loadTolerancePercent", 100 * LoadTolerance.MOST_SHARE, USUAL_TOLERANCE_PERCENT);
        Optional<Double> loadWatts = WiringReader.watts(cell);
        wiring.cell(cell, board, channel, loadOhms.orElse(0));
        Optional<Boolean> switched = cell.yesOrNo("switched");
        String procedure = procedure(cell, usualProcedure);
        if (chemistry.isPresent() && ratedAmpereHours.isPresent()) {
            refuseMisfit(cell, procedure, chemistry.get(), ratedAmpereHours.getAsDouble());
        }
        if (board.isPresent() && channel.isPresent()) {
            first(
                    cellLines,
                    board.get() + "/" + channel.getAsInt(),
                    cell,
                    "channel",
                    "channel " + channel.getAsInt() + " of board " + board.get() + " holds a cell");
        }
        if (board.isPresent()
                && channel.isPresent()
                && tag.isPresent()
                && chemistry.isPresent()
                && ratedAmpereHours.isPresent()
                && loadOhms.isPresent()
                && switched.isPresent()) {
            var entry = new CellEntry(
                    board.get(),
                    channel.getAsInt(),
                    tag.get(),
                    chemistry.get(),
                    ratedAmpereHours.getAsDouble(),
                    Optional.empty(),
                    loadOhms.getAsDouble(),
                    tolerancePercent,
                    loadWatts,
                    switched.get(),
                    procedure);
            cells.add(entry);
            string.ifPresent(given -> strings.member(entry, given, cell));
            if (string.isEmpty()) {
                LoadPower.check(entry, 1, cell);
            }
        } else {
            string.ifPresent(given -> strings.incomplete(board.orElse(""), given));
        }
    }

    private Optional<String> boardOf(YamlMapping cell) {
        List<String> names = List.copyOf(boardLines.keySet());
        if (!cell.has("board") && names.size() == 1) {
            return Optional.of(names.get(0));
        }
        if (namesMissing) { // told at the board
            return cell.node("board")
                    .filter(ScalarNode.class::isInstance)
                    .map(node -> ((ScalarNode) node).getValue())
                    .filter(names::contains);
        }
        return cell.choice("board", names);
    }

    private static void refuseMisfit(YamlMapping cell, String procedure, Chemistry chemistry, double ratedAmpereHours) {
        BuiltIn.ofKey(procedure)
                .flatMap(named -> named.refusal(chemistry.judged(), ratedAmpereHours))
                .ifPresent(why -> cell.fault("procedure", why));
    }

    private static void refuseSeries(YamlMapping cell) {
        if (cell.has("seriesCells")) {
            cell.fault(
                    "seriesCells",
                    "seriesCells is not used any more; one channel cannot see which of several cells in series is driven"
                            + " negative: give each cell of the string a channel, and each the same string: NAME");
        }
    }

    private static double numberOr(YamlMapping mapping, String key, double most, double usual) {
        return mapping.has(key) ? mapping.number(key, 0, most).orElse(usual) : usual;
    }

    /** Notes the first line of something that may occur once, and faults every other. */
    private static void first(
            Map<String, Integer> lines, String what, YamlMapping mapping, String key, String already) {
        Integer before = lines.putIfAbsent(what, mapping.line(key));
        if (before != null) {
            mapping.fault(key, already + " already, in line " + before);
        }
    }
}
