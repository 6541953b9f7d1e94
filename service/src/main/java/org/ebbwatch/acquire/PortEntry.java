package org.ebbwatch.acquire;

/**
 * A serial port that is there now.
 *
 * @param name short, such as {@code ttyUSB0}
 * @param description what the device says of itself
 * @param path by which it can be opened now
 * @param stablePath a link that leads to the same device after a replug, empty where there is none; the one for a rack file
 */
public record PortEntry(String name, String description, String path, String stablePath) {}
