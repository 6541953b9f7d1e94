package org.ebbwatch.rack;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.passage.ContactInput;

/**
 * A board of the rack.
 *
 * @param name by which cells, screens and records name it; unique
 * @param port where it is connected; unique
 * @param serialNumber refuse any other board on this port; empty: take the first that answers
 * @param contacts what is wired to its contact inputs
 */
public record BoardEntry(String name, PortAddress port, Optional<String> serialNumber, List<ContactInput> contacts) {
    public BoardEntry {
        contacts = List.copyOf(contacts);
    }

    /** A board to which no contact is wired. */
    public BoardEntry(String name, PortAddress port, Optional<String> serialNumber) {
        this(name, port, serialNumber, List.of());
    }
}
