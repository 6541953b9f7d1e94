package org.ebbwatch.profile.modbus;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.ebbwatch.acquire.LineFormat;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.profile.BoardProfile;
import org.ebbwatch.profile.Description;
import org.ebbwatch.profile.ProfiledBoard;
import org.ebbwatch.profile.ProfiledPort;

/**
 * What stands where in one or several devices on one line.
 *
 * @param serialNumber by which its boards are known where the rack file gives none
 * @param description what they are together
 * @param format of a character on a serial line
 * @param framing how requests travel
 * @param timeoutMillis how long an answer may take, 50 to 2000; longer than the slowest device ever takes
 * @param retries how often a request without a usable answer is made again, 0 to 5
 * @param mostGap how many registers that nobody needs may be read between two that are
 * @param mostRegisters how many registers a device gives at once
 * @param registers the numbers that are used; the index is that of the raw number
 * @param loads the switch of each channel that has one
 * @param contacts the bit of each contact input
 */
public record ModbusProfile(
        Optional<String> serialNumber,
        Description description,
        LineFormat format,
        Framing framing,
        int timeoutMillis,
        int retries,
        int mostGap,
        int mostRegisters,
        List<Register> registers,
        Map<Integer, LoadCoil> loads,
        List<Spot> contacts)
        implements BoardProfile {

    /** How requests travel. */
    public enum Framing {
        /** As bytes with a checksum, over a serial line or through a serial port server. */
        RTU,
        /** With a header, over TCP. */
        TCP
    }

    public ModbusProfile {
        Objects.requireNonNull(description, "description");
        registers = List.copyOf(registers);
        loads = Map.copyOf(loads);
        contacts = List.copyOf(contacts);
    }

    @Override
    public Supplier<Port> ports(PortAddress address, String asSerialNumber) {
        PortAddress reached = address instanceof PortAddress.Serial serial
                ? new PortAddress.Serial(serial.path(), serial.baud(), format)
                : address;
        long pauseNanos = address instanceof PortAddress.Serial serial ? RtuWire.pauseNanos(serial.baud()) : 0;
        ProfiledBoard board = new ProfiledBoard(description, asSerialNumber);
        LoadStates states = new LoadStates(this);
        return () -> {
            Wire wire = framing == Framing.RTU ? new RtuWire() : new TcpWire();
            var exchange = new Exchange(reached.port(), wire, timeoutMillis, pauseNanos, System::nanoTime);
            return new ProfiledPort(board, new ModbusLine(this, exchange, states, System::nanoTime));
        };
    }

    /** The requests of a scan. */
    List<Span> plan() {
        Stream<Span> numbers = registers.stream().map(Register::span);
        Stream<Span> bits = Stream.concat(loads.values().stream().map(LoadCoil::sense), contacts.stream())
                .map(spot -> new Span(spot, 1));
        return ReadPlan.of(Stream.concat(numbers, bits).toList(), mostGap, mostRegisters);
    }
}
