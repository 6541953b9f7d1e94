package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Identity;

/** What the readings of the rack's boards rest on: their own word, the rack file's, and the calibrations. */
final class Bases {
    private final Map<String, Wiring> wirings = new HashMap<>();
    private Function<String, List<Calibration>> calibrations = serialNumber -> List.of();

    void wire(String board, Wiring wiring) {
        wirings.put(board, wiring);
    }

    /** Calibrations of a board by its serial number. */
    void calibratedBy(Function<String, List<Calibration>> source) {
        calibrations = source;
    }

    /** Of a board that says so of itself. */
    BoardBasis of(String board, Identity said) {
        return new BoardBasis(said, wiring(board), calibrations.apply(said.serialNumber()));
    }

    private Wiring wiring(String board) {
        return wirings.getOrDefault(board, Wiring.NONE);
    }

    /** A line for each channel that the rack file names and the board has not, or cannot use so; none while the board is not known. */
    List<String> missing(BoardWatch board) {
        List<String> lines = new ArrayList<>();
        if (!board.isKnown()) {
            return lines;
        }
        Wiring wiring = wiring(board.name());
        wiring.roles().forEach((channel, role) -> {
            if (!isThermometer(board, channel)) {
                lines.add(unable(board, channel) + role + " is not watched there.");
            }
        });
        wiring.loadSensors().forEach((channel, sensor) -> {
            if (!isThermometer(board, sensor)) {
                lines.add(unable(board, sensor) + "the load of channel " + channel + " is not watched for heat.");
            }
        });
        return lines;
    }

    private static boolean isThermometer(BoardWatch board, int channel) {
        return channel < board.channels() && board.can(channel, Ability.CELSIUS);
    }

    private static String unable(BoardWatch board, int channel) {
        return "Board " + board.name() + " has no channel " + channel + " that reads a temperature: ";
    }
}
