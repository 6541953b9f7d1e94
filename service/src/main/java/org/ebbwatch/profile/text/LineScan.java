package org.ebbwatch.profile.text;

import java.util.OptionalLong;

/** What a line comes to. */
sealed interface LineScan {

    /**
     * A scan.
     *
     * @param millis the device's clock, u32; empty where the profile names no such column
     * @param raws the raw numbers; NaN where the line has something else in the column
     */
    record Scan(OptionalLong millis, double[] raws) implements LineScan {}

    /** A header or a comment. */
    record Nothing() implements LineScan {}

    /**
     * A line that is not taken.
     *
     * @param why for a person
     */
    record Refused(String why) implements LineScan {}
}
