package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.calibration.Meter;

/**
 * A channel to be calibrated.
 *
 * @param board its name in the rack file
 * @param channel from 0; no cell may be on it
 * @param meter what the meter is called
 * @param meterPercent of its reading, as its maker states its accuracy in the range used
 * @param meterVolts besides: digits times the volts of one digit; not both are 0
 * @param by who; "operator" where nothing is said
 */
@Serdeable
public record CalibrationAsked(
        @Schema(requiredMode = RequiredMode.REQUIRED) String board,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "63") int channel,
        @Schema(requiredMode = RequiredMode.REQUIRED, maxLength = 100) String meter,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "5") double meterPercent,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "0.05") double meterVolts,
        @Nullable @Schema(maxLength = 100) String by) {
    private static final String OPERATOR = "operator";
    private static final int HIGHEST_CHANNEL = 63;

    /** Reads the body. */
    public static CalibrationAsked read(@Nullable String text) {
        Body body = Body.of(text, "board", "channel", "meter", "meterPercent", "meterVolts", "by");
        var asked = new CalibrationAsked(
                body.line("board", AlarmBook.LONGEST_NAME),
                body.whole("channel", 0, HIGHEST_CHANNEL),
                body.line("meter", AlarmBook.LONGEST_NAME),
                body.number("meterPercent", 0, 100 * Meter.MOST),
                body.number("meterVolts", 0, Meter.MOST),
                body.isGiven("by") ? body.line("by", AlarmBook.LONGEST_NAME) : OPERATOR);
        if (asked.meterPercent + asked.meterVolts == 0) {
            throw Body.bad("No meter is exact: meterPercent and meterVolts cannot both be 0. Its manual states them.");
        }
        return asked;
    }

    /** The meter with its accuracy. */
    public Meter itsMeter() {
        return new Meter(meter, meterPercent / 100, meterVolts);
    }
}
