package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.UUID;
import org.ebbwatch.passage.DeskRequest.Load;

/**
 * The load on which a cell that left its string finishes singly.
 *
 * @param ohms the resistor across this cell alone
 * @param switched true where its channel's switch closes the load, false where hands do
 */
@Serdeable
public record LoadAsked(
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0.01", maximum = "100000") double ohms,
        @Schema(requiredMode = RequiredMode.REQUIRED) boolean switched) {

    /** Reads the body. */
    public static Load read(@Nullable String text, UUID passage, long seen) {
        Body body = Body.of(text, "ohms", "switched");
        return new Load(passage, seen, body.number("ohms", Load.LEAST_OHMS, Load.MOST_OHMS), body.truth("switched"));
    }
}
