package org.ebbwatch.profile.modbus;

/** The four tables of a Modbus device. */
public enum Table {
    /** Bits that can be written. */
    COILS("coil", 1, 2_000),
    /** Bits that can be read. */
    DISCRETE_INPUTS("discrete", 2, 2_000),
    /** Words of 16 bits that can be written. */
    HOLDING_REGISTERS("holding", 3, 125),
    /** Words of 16 bits that can be read. */
    INPUT_REGISTERS("input", 4, 125);

    private final String key;
    private final int readCode;
    private final int mostRead;

    Table(String key, int readCode, int mostRead) {
        this.key = key;
        this.readCode = readCode;
        this.mostRead = mostRead;
    }

    /** The word by which profiles name it. */
    public String key() {
        return key;
    }

    /** The function that reads it. */
    int readCode() {
        return readCode;
    }

    /** How many of it one request may read. */
    int mostRead() {
        return mostRead;
    }

    boolean isBits() {
        return this == COILS || this == DISCRETE_INPUTS;
    }

    /** How many bytes so many of it take in an answer. */
    int bytes(int quantity) {
        return isBits() ? (quantity + 7) / 8 : 2 * quantity;
    }
}
