package org.ebbwatch.profile.text;

import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ebbwatch.profile.Quantity;
import org.ebbwatch.rig.sensor.OneWire;

/**
 * Makes scans of lines. Nothing is guessed: a line with another number of columns than named, without its clock, with a number
 * that was cut, or without a single number is refused whole; a column that holds no number is missing from its scan. Pure; keeps
 * only the header the device printed last.
 */
final class LineReader {
    private static final LineScan NOTHING = new LineScan.Nothing();
    private static final Pattern MILLIS = Pattern.compile("\\d{1,10}");
    private static final Pattern SCRATCHPAD = Pattern.compile("[0-9A-Fa-f]{" + 2 * OneWire.SCRATCHPAD_BYTES + "}");
    private static final long HIGHEST_MILLIS = 0xFFFF_FFFFL;
    private static final int SHOWN = 60;

    private final TextProfile profile;
    private final List<String> needed;
    private List<String> columns;

    LineReader(TextProfile profile) {
        this.profile = profile;
        this.columns = profile.columns();
        this.needed = Stream.concat(
                        profile.millis().stream(), profile.used().stream().map(Column::name))
                .distinct()
                .toList();
    }

    /** What a whole line, not empty, comes to. */
    LineScan read(String line) {
        if (line.startsWith("#")) {
            return NOTHING;
        }
        List<String> cells = profile.separator().split(line);
        if (cells.containsAll(needed)) {
            columns = profile.columns().isEmpty() ? List.copyOf(cells) : columns;
            return NOTHING;
        }
        if (columns.isEmpty()) {
            return refused(
                    "The device has not printed the line that names its columns: switch it off and on, or list the"
                            + " columns in the profile; it said",
                    line);
        }
        if (cells.size() != columns.size()) {
            return refused("A line has " + cells.size() + " columns instead of " + columns.size(), line);
        }
        return scan(cells, line);
    }

    private LineScan scan(List<String> cells, String line) {
        OptionalLong millis = OptionalLong.empty();
        if (profile.millis().isPresent()) {
            millis = millis(cells.get(columns.indexOf(profile.millis().get())));
            if (millis.isEmpty()) {
                return refused("A line has no milliseconds in its column of the clock", line);
            }
        }
        double[] raws = new double[profile.used().size()];
        boolean any = false;
        for (int i = 0; i < raws.length; i++) {
            Column column = profile.used().get(i);
            String cell = cells.get(columns.indexOf(column.name()));
            if (isCut(column, cell)) {
                return refused("A number has not the decimals that the profile names", line);
            }
            raws[i] = raw(column, cell);
            any |= !Double.isNaN(raws[i]);
        }
        return any ? new LineScan.Scan(millis, raws) : refused("A line holds no number", line);
    }

    private boolean isCut(Column column, String cell) {
        return column.decimals().isPresent()
                && !Double.isNaN(profile.decimal().read(cell))
                && !profile.decimal().decimals(cell).equals(column.decimals());
    }

    private double raw(Column column, String cell) {
        double raw =
                switch (column.form()) {
                    case DECIMAL -> profile.decimal().read(cell);
                    case SCRATCHPAD -> scratchpad(cell).orElse(Double.NaN);
                };
        return column.open().isPresent() && column.open().getAsDouble() == raw ? Quantity.OPEN : raw;
    }

    private static OptionalDouble scratchpad(String cell) {
        return SCRATCHPAD.matcher(cell).matches()
                ? OneWire.celsius(HexFormat.of().parseHex(cell))
                : OptionalDouble.empty();
    }

    private static OptionalLong millis(String cell) {
        if (!MILLIS.matcher(cell).matches()) {
            return OptionalLong.empty();
        }
        long millis = Long.parseLong(cell);
        return millis <= HIGHEST_MILLIS ? OptionalLong.of(millis) : OptionalLong.empty();
    }

    private static LineScan refused(String why, String line) {
        String shown = line.length() > SHOWN ? line.substring(0, SHOWN) + "..." : line;
        return new LineScan.Refused(why + ": \"" + shown.replaceAll("[^ -~]", "?") + "\".");
    }
}
