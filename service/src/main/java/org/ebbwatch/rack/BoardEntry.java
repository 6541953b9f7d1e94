package org.ebbwatch.rack;

import java.nio.file.Path;
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
 * @param profile the file that says how it is read; empty: it speaks the rig protocol
 */
public record BoardEntry(
        String name,
        PortAddress port,
        Optional<String> serialNumber,
        List<ContactInput> contacts,
        Optional<Path> profile) {
    public BoardEntry {
        contacts = List.copyOf(contacts);
    }

    /** A board that speaks the rig protocol, to which no contact is wired. */
    public BoardEntry(String name, PortAddress port, Optional<String> serialNumber) {
        this(name, port, serialNumber, List.of(), Optional.empty());
    }
}
