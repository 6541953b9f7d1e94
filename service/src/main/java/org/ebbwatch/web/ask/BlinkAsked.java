package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.UUID;
import org.ebbwatch.passage.DeskRequest.Blink;

/**
 * Somebody looks for the cell.
 *
 * @param seconds how long its lamp blinks; 0 stops it
 */
@Serdeable
public record BlinkAsked(@Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "255") int seconds) {

    /** Reads the body. */
    public static Blink read(@Nullable String text, UUID passage, long seen) {
        return new Blink(passage, seen, Body.of(text, "seconds").whole("seconds", 0, Blink.MOST_SECONDS));
    }
}
