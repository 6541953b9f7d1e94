package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** One who listens to the live events on a connection of its own, and reads only when a test says so. */
final class Listening implements AutoCloseable {
    private static final int PATIENCE_MILLIS = 10_000;

    private final Socket socket;
    private final BufferedReader lines;
    private final String status;

    /** An event as it came: id, name and data; a comment has only itself. */
    record Told(String id, String name, String data, String comment) {}

    Listening(Place place, String... headers) throws IOException {
        socket = new Socket(InetAddress.getLoopbackAddress(), place.server().getPort());
        socket.setSoTimeout(PATIENCE_MILLIS);
        String more = headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n";
        String request = "GET /api/v1/events HTTP/1.1\r\nHost: localhost\r\n" + more + "\r\n";
        socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
        lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
        status = lines.readLine();
        String header = lines.readLine();
        while (!header.isEmpty()) {
            header = lines.readLine();
        }
    }

    String status() {
        return status;
    }

    /** The next event, whole; the chunks of HTTP are of no interest. */
    Told next() throws IOException {
        String id = "";
        String name = "";
        String data = "";
        String comment = "";
        while (true) {
            String line = lines.readLine();
            assertThat(line).as("the stream goes on").isNotNull();
            if (line.startsWith("id: ")) {
                id = line.substring(4);
            } else if (line.startsWith("event: ")) {
                name = line.substring(7);
            } else if (line.startsWith("data: ")) {
                data = line.substring(6);
            } else if (line.startsWith(": ")) {
                comment = line.substring(2);
            } else if (line.isEmpty() && !(id + name + data + comment).isEmpty()) {
                return new Told(id, name, data, comment);
            }
        }
    }

    /** Whether the stream ends here. */
    boolean isEnded() throws IOException {
        String line = lines.readLine();
        while (line != null && (line.isEmpty() || line.equals("0"))) {
            line = lines.readLine();
        }
        return line == null;
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
