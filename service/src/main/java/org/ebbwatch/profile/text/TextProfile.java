package org.ebbwatch.profile.text;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.ebbwatch.acquire.LineFormat;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.profile.BoardProfile;
import org.ebbwatch.profile.Description;
import org.ebbwatch.profile.ProfiledBoard;
import org.ebbwatch.profile.ProfiledPort;

/**
 * How a device's lines are read.
 *
 * @param serialNumber by which its boards are known where the rack file gives none
 * @param description what it is
 * @param format of a character on a serial line
 * @param separator what stands between two columns
 * @param decimal what stands before the decimals
 * @param columns the name of every column in the device's order; empty: a header line of the device names them
 * @param millis name of the column of the device's clock; empty: it has none
 * @param used the columns that are used; the index is that of the raw number
 */
public record TextProfile(
        Optional<String> serialNumber,
        Description description,
        LineFormat format,
        Separator separator,
        DecimalMark decimal,
        List<String> columns,
        Optional<String> millis,
        List<Column> used)
        implements BoardProfile {

    public TextProfile {
        Objects.requireNonNull(description, "description");
        columns = List.copyOf(columns);
        used = List.copyOf(used);
        if (decimal == DecimalMark.COMMA && separator == Separator.COMMA) {
            throw new IllegalArgumentException("a comma cannot be both the separator and the decimal mark");
        }
        if (used.isEmpty()) {
            throw new IllegalArgumentException("a profile uses at least one column");
        }
    }

    @Override
    public Supplier<Port> ports(PortAddress address, String asSerialNumber) {
        PortAddress reached = address instanceof PortAddress.Serial serial
                ? new PortAddress.Serial(serial.path(), serial.baud(), format)
                : address;
        ProfiledBoard board = new ProfiledBoard(description, asSerialNumber);
        TextScans scans = new TextScans(this);
        return () -> new ProfiledPort(board, new TextLine(reached.port(), scans, System::nanoTime));
    }
}
