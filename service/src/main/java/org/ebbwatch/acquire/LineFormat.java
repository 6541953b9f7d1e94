package org.ebbwatch.acquire;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** How a character travels on a serial line; eight data bits always. */
public enum LineFormat {
    /** No parity, one stop bit: the usual one. */
    EIGHT_N_ONE("8N1"),
    /** No parity, two stop bits. */
    EIGHT_N_TWO("8N2"),
    /** Even parity, one stop bit: what the Modbus standard asks for. */
    EIGHT_E_ONE("8E1"),
    /** Odd parity, one stop bit. */
    EIGHT_O_ONE("8O1");

    private final String key;

    LineFormat(String key) {
        this.key = key;
    }

    /** How people write it, such as 8N1. */
    public String key() {
        return key;
    }

    /** How people write them all. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(LineFormat::key).toList();
    }

    /** The one of this key. */
    public static Optional<LineFormat> ofKey(String key) {
        return Arrays.stream(values()).filter(format -> format.key.equals(key)).findFirst();
    }
}
