package org.ebbwatch.profile.modbus;

/**
 * Neighbouring registers or bits, read by one request.
 *
 * @param from the first
 * @param quantity how many, at least 1
 */
public record Span(Spot from, int quantity) {
    public Span {
        if (quantity < 1 || quantity > from.table().mostRead() || from.address() + quantity > 0x1_0000) {
            throw new IllegalArgumentException(
                    "quantity must be 1 to " + from.table().mostRead() + " and end at 65535, not " + quantity);
        }
    }

    /** Address after the last. */
    int end() {
        return from.address() + quantity;
    }

    boolean contains(Spot spot) {
        return spot.unitId() == from.unitId()
                && spot.table() == from.table()
                && spot.address() >= from.address()
                && spot.address() < end();
    }

    /** One bit of what a block of bits held. */
    boolean bit(Spot spot, byte[] data) {
        int index = spot.address() - from.address();
        return ((data[index / 8] >> (index % 8)) & 1) == 1;
    }

    @Override
    public String toString() {
        return from.table().key() + " " + from.address() + (quantity == 1 ? "" : " to " + (end() - 1)) + " of unit "
                + from.unitId();
    }
}
