package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.UUID;
import org.ebbwatch.passage.DeskRequest.Move;

/**
 * The cell was put onto another channel of the same board.
 *
 * @param channel a free cell channel; for a cell whose leads are bonded also a thermometer in the watch container
 */
@Serdeable
public record MoveAsked(@Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "63") int channel) {
    private static final int HIGHEST_CHANNEL = 63;

    /** Reads the body. */
    public static Move read(@Nullable String text, UUID passage, long seen) {
        return new Move(passage, seen, Body.of(text, "channel").whole("channel", 0, HIGHEST_CHANNEL));
    }
}
