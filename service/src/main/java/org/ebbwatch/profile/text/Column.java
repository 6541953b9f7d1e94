package org.ebbwatch.profile.text;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A column that is used, for one raw number.
 *
 * @param name as the profile or the device's header names it
 * @param form how the number is written
 * @param decimals how many digits follow the decimal mark, 0 to 9: a line in which there are fewer or more was cut; empty: any
 * @param open the number by which the device says that the sensor is open
 */
public record Column(String name, Form form, OptionalInt decimals, OptionalDouble open) {

    /** How a number is written. */
    public enum Form {
        /** As a decimal number. */
        DECIMAL,
        /** As the 18 hexadecimal digits of a 1-Wire scratchpad. */
        SCRATCHPAD
    }

    public Column {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(form, "form");
        Objects.requireNonNull(decimals, "decimals");
        Objects.requireNonNull(open, "open");
    }
}
