package org.ebbwatch.rack;

import java.util.Optional;
import org.ebbwatch.acquire.PortAddress;

/**
 * A board of the rack.
 *
 * @param name by which cells, screens and records name it; unique
 * @param port where it is connected; unique
 * @param serialNumber refuse any other board on this port; empty: take the first that answers
 */
public record BoardEntry(String name, PortAddress port, Optional<String> serialNumber) {}
