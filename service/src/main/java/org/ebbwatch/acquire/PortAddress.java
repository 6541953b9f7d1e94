package org.ebbwatch.acquire;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a board is to be found. */
public sealed interface PortAddress {

    /** Bits per second where none are named. */
    int USUAL_BAUD = 115_200;

    /**
     * A serial port.
     *
     * @param path such as a link below {@code /dev/serial/by-id}, or {@code COM3}
     * @param baud bits per second, 1200 to 4000000
     * @param format of a character
     */
    record Serial(String path, int baud, LineFormat format) implements PortAddress {
        /** A port of the usual format. */
        public Serial(String path, int baud) {
            this(path, baud, LineFormat.EIGHT_N_ONE);
        }

        public Serial {
            if (path.isBlank()) {
                throw new IllegalArgumentException("a serial port needs a path");
            }
            if (baud < 1_200 || baud > 4_000_000) {
                throw new IllegalArgumentException("baud must be 1200 to 4000000, not " + baud);
            }
        }

        @Override
        public Port port() {
            return new SerialPortLink(path, baud, format);
        }

        @Override
        public String toString() {
            return path;
        }
    }

    /** A board, or a serial port server, on the network. */
    record Tcp(String host, int portNumber) implements PortAddress {
        public Tcp {
            if (host.isBlank()) {
                throw new IllegalArgumentException("a network address needs a host");
            }
            if (portNumber < 1 || portNumber > 65_535) {
                throw new IllegalArgumentException("a network port must be 1 to 65535, not " + portNumber);
            }
        }

        @Override
        public Port port() {
            return new TcpLink(host, portNumber);
        }

        @Override
        public String toString() {
            return "tcp:" + (host.contains(":") ? "[" + host + "]" : host) + ":" + portNumber;
        }
    }

    /** A new, closed port at this address. */
    Port port();

    /** Reads {@code tcp:HOST:PORT} or a serial port's path; empty where it is neither. */
    static Optional<PortAddress> parse(String text, int baud) {
        if (!text.startsWith("tcp:")) {
            return text.isBlank() ? Optional.empty() : Optional.of(new Serial(text, baud));
        }
        Matcher parts = Pattern.compile("tcp:(?:\\[([0-9A-Fa-f:.%]+)]|([^:\\[\\]\\s]+)):(\\d{1,5})")
                .matcher(text);
        if (!parts.matches()) {
            return Optional.empty();
        }
        int portNumber = Integer.parseInt(parts.group(3));
        String host = parts.group(1) == null ? parts.group(2) : parts.group(1);
        return portNumber < 1 || portNumber > 65_535 ? Optional.empty() : Optional.of(new Tcp(host, portNumber));
    }
}
