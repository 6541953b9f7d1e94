package org.ebbwatch.acquire;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/**
 * A serial port, raw, eight data bits. The only class that knows the serial library.
 *
 * <p>The path is resolved anew at every attempt: a link below {@code /dev/serial/by-id} leads to another device after a
 * replug. The library's {@code isOpen} stays true after an unplug and its listeners are not used: a negative read is the loss.
 * The library knows no write time-out on Linux; a write that the other end does not take is freed by {@link #close} alone, and
 * a write after a loss takes nothing without saying that it failed. A port this process has open already is told as missing.
 *
 * <p>The library unpacks its native part to the temporary directory; where nothing may be executed there, set the system
 * property {@code jSerialComm.library.path}.
 */
final class SerialPortLink implements Port {

    private static final int READ_MILLIS = 100;
    /** Error numbers of Linux, the same on every architecture Java 17 runs on there. */
    private static final int ENOENT = 2;

    private static final int EAGAIN = 11;
    private static final int EACCES = 13;
    private static final int EBUSY = 16;

    private final String path;
    private final int baud;
    private final LineFormat format;
    private final AtomicReference<SerialPort> open = new AtomicReference<>();

    SerialPortLink(String path, int baud) {
        this(path, baud, LineFormat.EIGHT_N_ONE);
    }

    SerialPortLink(String path, int baud, LineFormat format) {
        this.path = path;
        this.baud = baud;
        this.format = format;
    }

    /** The serial ports there are now. */
    static List<PortEntry> present() {
        return Arrays.stream(SerialPort.getCommPorts())
                .map(port -> new PortEntry(
                        port.getSystemPortName(), port.getPortDescription(), port.getSystemPortPath(), ""))
                .toList();
    }

    @Override
    public void open() throws PortUnavailable {
        refuseMissingOrForbidden();
        SerialPort port;
        try {
            port = SerialPort.getCommPort(path);
        } catch (SerialPortInvalidPortException e) {
            throw missing();
        } catch (LinkageError e) {
            throw new PortUnavailable(
                    PortUnavailable.Reason.OTHER,
                    "The serial library cannot be loaded (" + e.getMessage()
                            + "). Where the temporary directory forbids"
                            + " execution, start with -DjSerialComm.library.path=DIRECTORY.");
        }
        port.setComPortParameters(baud, 8, stopBits(format), parity(format));
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
        if (!port.openPort()) {
            throw unavailable(port.getLastErrorCode());
        }
        open.set(port);
    }

    @Override
    public int read(byte[] into) throws IOException {
        return port().readBytes(into, into.length);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        int written = 0;
        while (written < length) {
            int count = port().writeBytes(bytes, length - written, offset + written);
            if (count <= 0) {
                throw new IOException("the serial port takes no more bytes");
            }
            written += count;
        }
    }

    @Override
    public void close() {
        SerialPort port = open.getAndSet(null);
        if (port != null) {
            port.closePort();
        }
    }

    private static int stopBits(LineFormat format) {
        return format == LineFormat.EIGHT_N_TWO ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
    }

    private static int parity(LineFormat format) {
        return switch (format) {
            case EIGHT_N_ONE, EIGHT_N_TWO -> SerialPort.NO_PARITY;
            case EIGHT_E_ONE -> SerialPort.EVEN_PARITY;
            case EIGHT_O_ONE -> SerialPort.ODD_PARITY;
        };
    }

    private SerialPort port() throws IOException {
        SerialPort port = open.get();
        if (port == null) {
            throw new IOException("the serial port is closed");
        }
        return port;
    }

    private void refuseMissingOrForbidden() throws PortUnavailable {
        if (!path.startsWith("/")) {
            return;
        }
        Path file = Path.of(path);
        if (!Files.exists(file)) {
            throw missing();
        }
        if (!Files.isReadable(file) || !Files.isWritable(file)) {
            throw forbidden();
        }
    }

    private PortUnavailable unavailable(int errorNumber) {
        return switch (errorNumber) {
            case ENOENT -> Files.exists(Path.of(path)) ? inUse() : missing();
            case EACCES -> forbidden();
            case EAGAIN, EBUSY -> inUse();
            default ->
                new PortUnavailable(
                        PortUnavailable.Reason.OTHER,
                        "The port " + path + " cannot be opened (error " + errorNumber
                                + "). Check that it is a serial port;" + " unplug the board and plug it in again.");
        };
    }

    private PortUnavailable inUse() {
        return new PortUnavailable(
                PortUnavailable.Reason.IN_USE,
                "The port " + path
                        + " is in use, by another program or by another board of the rack file. Close that program;"
                        + " `fuser -v " + path + "` shows which it is.");
    }

    private PortUnavailable missing() {
        return new PortUnavailable(
                PortUnavailable.Reason.MISSING,
                "The port " + path
                        + " does not exist. Plug the board in, or correct the port in the rack file; `ebbwatch"
                        + " ports` lists the ports there are.");
    }

    private PortUnavailable forbidden() {
        String group = groupOfPort();
        return new PortUnavailable(
                PortUnavailable.Reason.FORBIDDEN,
                "This user may not open " + path + ". Add the user to the group " + group + " (`sudo usermod -aG "
                        + group + " USER`) and log in again, or restart the service.");
    }

    private String groupOfPort() {
        try {
            return Files.readAttributes(Path.of(path), PosixFileAttributes.class)
                    .group()
                    .getName();
        } catch (IOException | UnsupportedOperationException e) {
            return "dialout";
        }
    }
}
