package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;

/** Says of each channel of a board what it reads and what is the matter with it. The bounds are common practice, no source. */
final class ChannelCheck {
    private static final double REVERSED_VOLTS = -0.02;
    private static final double MOST_VOLTS = 4.5;
    private static final double LOW_VOLTS = 1.0;
    private static final double LEAST_CELSIUS = -10;
    private static final double WARM_CELSIUS = 45;
    private static final double COLDER_THAN_THE_ROOM_KELVIN = 10;
    private static final String NONE = "-";

    private ChannelCheck() {}

    /**
     * The lines of one board.
     *
     * @param readings by channel
     * @param cells that the rack file puts on it
     */
    static List<ChannelLine> lines(String board, BoardBasis basis, List<Scan> readings, List<CellEntry> cells) {
        List<ChannelLine> lines = new ArrayList<>();
        List<ChannelIdentity> channels = basis.identity().channels();
        for (int channel = 0; channel < readings.size(); channel++) {
            int number = channel;
            Optional<CellEntry> cell =
                    cells.stream().filter(it -> it.channel() == number).findFirst();
            lines.add(line(board + ' ' + channel, channels.get(channel), readings.get(channel), cell));
        }
        for (CellEntry cell : cells) {
            if (cell.channel() >= readings.size()) {
                lines.add(ChannelLine.trouble(
                        board + ' ' + cell.channel(),
                        "the board has no such channel for the cell " + cell.tag(),
                        "Correct channel in the rack file: the board has 0 to " + (readings.size() - 1) + "."));
            }
        }
        return lines;
    }

    private static ChannelLine line(String about, ChannelIdentity channel, Scan read, Optional<CellEntry> cell) {
        Map.Entry<String, String> matter = matter(channel, read, cell);
        return new ChannelLine(
                about,
                cell.map(CellEntry::tag).orElse(channel.role().name().toLowerCase(Locale.ROOT)),
                Double.isNaN(read.volts())
                        ? NONE
                        : String.format(Locale.ROOT, "%.4f +- %.4f", read.volts(), read.expandedVolts()),
                Double.isNaN(read.celsius()) ? NONE : String.format(Locale.ROOT, "%.1f", read.celsius()),
                channel.can(Ability.LOAD_SWITCH) ? (read.loadApplied() ? "on" : "off") : NONE,
                matter.getKey(),
                matter.getValue());
    }

    /** What is the matter, and what to do; the first that applies. */
    private static Map.Entry<String, String> matter(ChannelIdentity channel, Scan read, Optional<CellEntry> cell) {
        if (read.celsius() >= WARM_CELSIUS) {
            return Map.entry(
                    "WARM", "Keep away, watch it from a distance, and follow your emergency plan: docs/safety.md.");
        }
        if (cell.isPresent()) {
            Map.Entry<String, String> ofCell = cellMatter(channel, read, cell.get());
            if (!ofCell.getKey().equals(ChannelLine.OK)) {
                return ofCell;
            }
        } else if (read.loadApplied()) {
            return Map.entry(
                    "a load is on where the rack file has no cell", "Open it, or name the cell in the rack file.");
        }
        return sensorMatter(channel, read, cell.isPresent());
    }

    private static Map.Entry<String, String> cellMatter(ChannelIdentity channel, Scan read, CellEntry cell) {
        double volts = read.volts();
        if (channel.role() != ChannelRole.CELL) {
            return Map.entry(
                    "no cell channel: " + channel.role().name().toLowerCase(Locale.ROOT),
                    "Put the cell onto a cell channel, or correct channel in the rack file.");
        }
        if (cell.switched() && cell.string().isEmpty() && !channel.can(Ability.LOAD_SWITCH)) {
            return Map.entry("has no load switch", "Say switched: false, or use a channel that has one.");
        }
        if (Double.isNaN(volts)) {
            return Map.entry("no volts", "See to the channel and its leads.");
        }
        if (read.suspect() == Suspicion.VOLTS_AT_RAIL || volts > MOST_VOLTS) {
            return Map.entry("at the end of its range", "Look at leads, polarity and range of the channel.");
        }
        if (volts + read.expandedVolts() < REVERSED_VOLTS) {
            return Map.entry(
                    "reversed", "Look at the polarity of the leads. A cell that is truly reversed is never charged.");
        }
        if (read.loadApplied()) {
            return Map.entry("its load is on", "No service watches it: open the load, or start the service.");
        }
        if (volts < LOW_VOLTS) {
            return Map.entry(
                    "low: empty, or a lead is off", "Hold a meter to the cell's own terminals before you believe it.");
        }
        return Map.entry(ChannelLine.OK, "");
    }

    private static Map.Entry<String, String> sensorMatter(ChannelIdentity channel, Scan read, boolean needed) {
        if (!channel.can(Ability.CELSIUS)) {
            return needed
                    ? Map.entry(
                            "has no temperature sensor",
                            "A cell is not watched without one: use a channel that has one.")
                    : Map.entry(ChannelLine.OK, "");
        }
        boolean wanted = needed || channel.role() != ChannelRole.CELL;
        if (read.suspect() == Suspicion.SENSOR_OPEN && wanted) {
            return Map.entry("sensor open", "See to the sensor's plug and wires.");
        }
        if (Double.isNaN(read.celsius()) && wanted) {
            return Map.entry("no temperature", "See to the sensor's plug and wires.");
        }
        if (read.celsius() < LEAST_CELSIUS || read.celsius() < read.ambientCelsius() - COLDER_THAN_THE_ROOM_KELVIN) {
            return Map.entry("far colder than the room", "See to the sensor: an open one may read cold.");
        }
        return Map.entry(ChannelLine.OK, "");
    }
}
