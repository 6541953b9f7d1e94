package org.ebbwatch.profile.modbus;

/**
 * The switch of a load.
 *
 * @param coil written: on closes the load, off opens it, so that a device without power has it open
 * @param sense read back: on while the load is connected; the coil itself where nothing else tells
 */
public record LoadCoil(Spot coil, Spot sense) {
    public LoadCoil {
        if (coil.table() != Table.COILS || !sense.table().isBits()) {
            throw new IllegalArgumentException("a load is switched by a coil and sensed by a bit");
        }
    }
}
