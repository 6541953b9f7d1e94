package org.ebbwatch.passage;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.ebbwatch.rig.message.ChannelRole;

/**
 * What a rack file says of the channels of a board, beyond what the board says itself.
 *
 * @param roles what a channel is wired to, against the board's own word
 * @param loadSensors by channel of a cell: the channel of its load's own temperature sensor
 * @param leadShares by channel of a cell: the resistance of its leads over its load's, where the volts are measured at the load's
 *     end of the leads
 */
public record Wiring(
        SortedMap<Integer, ChannelRole> roles,
        SortedMap<Integer, Integer> loadSensors,
        SortedMap<Integer, Double> leadShares) {
    /** Nothing beyond the board's own word. */
    public static final Wiring NONE = new Wiring(Map.of(), Map.of(), Map.of());

    public Wiring {
        roles = Collections.unmodifiableSortedMap(new TreeMap<>(roles));
        loadSensors = Collections.unmodifiableSortedMap(new TreeMap<>(loadSensors));
        leadShares = Collections.unmodifiableSortedMap(new TreeMap<>(leadShares));
    }

    /** The same of maps in any order. */
    public Wiring(Map<Integer, ChannelRole> roles, Map<Integer, Integer> loadSensors, Map<Integer, Double> leadShares) {
        this(new TreeMap<>(roles), new TreeMap<>(loadSensors), new TreeMap<>(leadShares));
    }
}
