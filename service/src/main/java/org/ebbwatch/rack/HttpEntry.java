package org.ebbwatch.rack;

import java.util.List;

/**
 * Where the service's page is served.
 *
 * @param address of this machine to listen on; 127.0.0.1 is reached from this machine alone
 * @param port 1 to 65535
 * @param names further host names by which people reach it; whoever acts under another name is refused
 */
public record HttpEntry(String address, int port, List<String> names) {
    public HttpEntry {
        names = List.copyOf(names);
    }

    /** Reached by its address and as localhost. */
    public HttpEntry(String address, int port) {
        this(address, port, List.of());
    }
}
