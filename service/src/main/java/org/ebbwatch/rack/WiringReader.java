package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.ebbwatch.passage.Wiring;
import org.ebbwatch.rig.message.ChannelRole;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Reads what a rack file says of channels beyond the cells on them: thermometers, load sensors, leads. */
final class WiringReader {
    static final List<String> BOARD_KEYS = List.of("ambientChannel", "dummyChannel", "watchChannels");
    static final List<String> CELL_KEYS =
            List.of("loadWatts", "loadSensorChannel", "leadOhms", "leadMetres", "leadSquareMillimetres");

    /** Of copper at 20 degC, in ohm metres (IACS; CRC-type handbooks give the same figure; from memory). */
    private static final double COPPER_OHM_METRES = 1.7241e-8;

    private static final double SQUARE_METRES_PER_SQUARE_MILLIMETRE = 1e-6;
    private static final int LEADS = 2;
    private static final int HIGHEST_CHANNEL = 63;
    private static final double MOST_LEAD_OHMS = 10;
    private static final double MOST_LEAD_METRES = 50;
    private static final double MOST_SQUARE_MILLIMETRES = 50;
    private static final double MOST_WATTS = 10_000;

    private final Map<String, Map<Integer, Taken>> taken = new HashMap<>();
    private final Map<String, Map<Integer, Integer>> loadSensors = new HashMap<>();
    private final Map<String, Map<Integer, Double>> leadShares = new HashMap<>();
    private final Faults faults;

    /** A channel that is wired, and the line that says so. */
    private record Taken(ChannelRole role, int line) {}

    WiringReader(Faults faults) {
        this.faults = faults;
    }

    /** The thermometers of a board. */
    void board(YamlMapping board, String name) {
        channel(board, "ambientChannel")
                .ifPresent(channel -> take(name, channel, ChannelRole.AMBIENT, board.line("ambientChannel")));
        channel(board, "dummyChannel")
                .ifPresent(channel -> take(name, channel, ChannelRole.DUMMY, board.line("dummyChannel")));
        for (Node node : board.list("watchChannels")) {
            String text = node instanceof ScalarNode scalar ? scalar.getValue() : "";
            if (text.matches("\\d{1,2}") && Integer.parseInt(text) <= HIGHEST_CHANNEL) {
                take(name, Integer.parseInt(text), ChannelRole.WATCH, Faults.line(node));
            } else {
                faults.add(
                        Faults.line(node),
                        "watchChannels are whole numbers from 0 to " + HIGHEST_CHANNEL + ", not \"" + text + '"');
            }
        }
    }

    /** What a cell says of its load's sensor and its leads. */
    void cell(YamlMapping cell, Optional<String> board, OptionalInt channel, double loadOhms) {
        OptionalInt sensor = channel(cell, "loadSensorChannel");
        Optional<Double> leads = leadOhms(cell);
        if (board.isEmpty() || channel.isEmpty()) {
            return;
        }
        take(board.get(), channel.getAsInt(), ChannelRole.CELL, cell.line("channel"));
        sensor.ifPresent(each -> {
            take(board.get(), each, ChannelRole.BANK, cell.line("loadSensorChannel"));
            of(loadSensors, board.get()).put(channel.getAsInt(), each);
        });
        leads.filter(ohms -> ohms > 0 && loadOhms > 0)
                .ifPresent(ohms -> of(leadShares, board.get()).put(channel.getAsInt(), ohms / loadOhms));
    }

    /** The rated power of a load; empty where it is not given. */
    static Optional<Double> watts(YamlMapping cell) {
        return number(cell, "loadWatts", 0.01, MOST_WATTS);
    }

    /** Both leads together; empty where nothing is said of them. */
    private static Optional<Double> leadOhms(YamlMapping cell) {
        Optional<Double> ohms = number(cell, "leadOhms", 0, MOST_LEAD_OHMS);
        Optional<Double> metres = number(cell, "leadMetres", 0.01, MOST_LEAD_METRES);
        Optional<Double> section = number(cell, "leadSquareMillimetres", 0.01, MOST_SQUARE_MILLIMETRES);
        boolean hasMetres = cell.has("leadMetres");
        boolean hasSection = cell.has("leadSquareMillimetres");
        if (cell.has("leadOhms") && (hasMetres || hasSection)) {
            cell.fault("leadOhms", "give leadOhms, or leadMetres and leadSquareMillimetres, not both");
        } else if (hasMetres != hasSection) {
            String given = hasMetres ? "leadMetres" : "leadSquareMillimetres";
            cell.fault(
                    given,
                    given + " needs " + (hasMetres ? "leadSquareMillimetres" : "leadMetres")
                            + " beside it: the length of one lead and its copper's cross-section");
        }
        return ohms.or(() -> metres.flatMap(length -> section.map(area -> LEADS * ohms(length, area))));
    }

    /** Of a copper wire so long and so thick, at 20 degC. */
    static double ohms(double metres, double squareMillimetres) {
        return COPPER_OHM_METRES * metres / (squareMillimetres * SQUARE_METRES_PER_SQUARE_MILLIMETRE);
    }

    private static Optional<Double> number(YamlMapping mapping, String key, double least, double most) {
        return mapping.has(key)
                ? mapping.number(key, least, most).stream().boxed().findFirst()
                : Optional.empty();
    }

    private static OptionalInt channel(YamlMapping mapping, String key) {
        return mapping.has(key) ? mapping.whole(key, 0, HIGHEST_CHANNEL) : OptionalInt.empty();
    }

    /** Several loads may share a sensor; nothing else is wired twice. That two cells are on one channel is told elsewhere. */
    private void take(String board, int channel, ChannelRole role, int line) {
        Taken before = of(taken, board).putIfAbsent(channel, new Taken(role, line));
        boolean shared =
                before != null && before.role == role && (role == ChannelRole.BANK || role == ChannelRole.CELL);
        if (before != null && !shared) {
            faults.add(
                    line,
                    "channel " + channel + " of board " + board + " is wired already, in line " + before.line + ", as "
                            + before.role + "; each channel has one thing on it");
        }
    }

    private static <T> Map<Integer, T> of(Map<String, Map<Integer, T>> byBoard, String board) {
        return byBoard.computeIfAbsent(board, each -> new LinkedHashMap<>());
    }

    /** What is wired beyond the boards' own word, by their names. */
    Map<String, Wiring> wirings() {
        Map<String, Wiring> wirings = new LinkedHashMap<>();
        for (String board : new ArrayList<>(taken.keySet())) {
            Map<Integer, ChannelRole> roles = new HashMap<>();
            of(taken, board).forEach((channel, it) -> {
                if (it.role != ChannelRole.CELL) {
                    roles.put(channel, it.role);
                }
            });
            var wiring = new Wiring(roles, of(loadSensors, board), of(leadShares, board));
            if (!wiring.equals(Wiring.NONE)) {
                wirings.put(board, wiring);
            }
        }
        return wirings;
    }
}
