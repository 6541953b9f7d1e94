package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.UUID;
import org.ebbwatch.passage.DeskRequest.Meter;

/**
 * What a meter shows that is held to the cell's own terminals.
 *
 * @param volts negative where the cell is reversed
 */
@Serdeable
public record MeterAsked(
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "-5.5", maximum = "5.5") double volts) {

    /** Reads the body. */
    public static Meter read(@Nullable String text, UUID passage, long seen) {
        return new Meter(passage, seen, Body.of(text, "volts").number("volts", -Meter.MOST_VOLTS, Meter.MOST_VOLTS));
    }
}
