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

    private static final Path BY_NAME = Path.of("/dev/serial/by-id");
    /** Where a board has no name of its own, or the same as another: by the socket it is plugged into. */
    private static final Path BY_PLACE = Path.of("/dev/serial/by-path");

    private PortList() {}

    /**
     * Reads the list now.
     *
     * @throws IOException if the stable paths are there but cannot be read
     */
    public static List<PortEntry> read() throws IOException {
        return withStablePaths(withStablePaths(SerialPortLink.present(), BY_PLACE), BY_NAME);
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
