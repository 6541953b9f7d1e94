package org.ebbwatch.profile.modbus;

import java.util.Map;
import java.util.TreeMap;

/**
 * Which loads a device showed as connected when it was last asked. A state that cannot be read stays what it was: a load that may
 * be on is not said to be off. Pure.
 */
final class LoadStates {
    private final Map<Integer, LoadCoil> coils;
    private final Map<Integer, Boolean> applied = new TreeMap<>();

    LoadStates(ModbusProfile profile) {
        coils = new TreeMap<>(profile.loads());
    }

    /** The switch of each channel that has one, by channel. */
    Map<Integer, LoadCoil> coils() {
        return coils;
    }

    /** A block of bits was read. */
    void read(Span block, byte[] data) {
        coils.forEach((channel, coil) -> {
            if (block.contains(coil.sense())) {
                applied.put(channel, block.bit(coil.sense(), data));
            }
        });
    }

    /** Whether the load of a channel was connected. */
    boolean isApplied(int channel) {
        return applied.getOrDefault(channel, false);
    }
}
