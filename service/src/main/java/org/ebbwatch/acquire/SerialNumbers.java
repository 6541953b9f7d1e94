package org.ebbwatch.acquire;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which board of a rack goes by which serial number, from the first time on until the service ends: two boards that say they are
 * the same are never both believed. Used under the rack's lock.
 */
public final class SerialNumbers {
    private final Map<String, String> boards = new HashMap<>();

    /** The board says this is its serial number; gives the other board that goes by it already. */
    Optional<String> claim(String serialNumber, String board) {
        String holder = boards.putIfAbsent(serialNumber, board);
        return Optional.ofNullable(holder).filter(other -> !other.equals(board));
    }
}
