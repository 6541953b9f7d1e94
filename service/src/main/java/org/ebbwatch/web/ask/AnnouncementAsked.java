package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.UUID;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.passage.DeskRequest.Announce;

/**
 * Work that is about to be done at the channel. Until it is over relative limits pause there; absolute trips stay armed.
 *
 * @param kind which work
 * @param minutes how long it may take
 */
@Serdeable
public record AnnouncementAsked(
        Work kind, @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "1", maximum = "60") int minutes) {

    /** Reads the body. */
    public static Announce read(@Nullable String text, UUID passage, long seen) {
        Body body = Body.of(text, "kind", "minutes");
        return new Announce(
                passage,
                seen,
                body.choice("kind", Work.values(), Work::name),
                body.whole("minutes", 1, Announce.MOST_MINUTES));
    }
}
