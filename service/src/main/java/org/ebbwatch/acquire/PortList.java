package org.ebbwatch.acquire;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The serial ports of this machine, with the paths that outlast a replug. */
public final class PortList {

    private static final Path STABLE_PATHS = Path.of("/dev/serial/by-id");

    private PortList() {}

    /**
     * Reads the list now.
     *
     * @throws IOException if the stable paths are there but cannot be read
     */
    public static List<PortEntry> read() throws IOException {
        return withStablePaths(SerialPortLink.present(), STABLE_PATHS);
    }

    /** Adds to each port the link in {@code links} that leads to it; a directory that is not there adds nothing. */
    static List<PortEntry> withStablePaths(List<PortEntry> ports, Path links) throws IOException {
        Map<Path, String> linkTo = new HashMap<>();
        if (Files.isDirectory(links)) {
            try (DirectoryStream<Path> entries = Files.newDirectoryStream(links)) {
                for (Path link : entries) {
                    if (Files.exists(link)) {
                        linkTo.put(link.toRealPath(), link.toString());
                    }
                }
            }
        }
        List<PortEntry> found = new ArrayList<>();
        for (PortEntry port : ports) {
            Path path = Path.of(port.path());
            Path device = Files.exists(path) ? path.toRealPath() : path;
            found.add(new PortEntry(
                    port.name(), port.description(), port.path(), linkTo.getOrDefault(device, port.stablePath())));
        }
        return found;
    }
}
