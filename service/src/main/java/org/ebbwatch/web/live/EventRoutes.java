package org.ebbwatch.web.live;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.MediaType;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Header;
import io.micronaut.http.sse.Event;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.web.answer.HappeningAnswer;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;
import org.reactivestreams.Publisher;

/** What happens on the rack, told while it happens. */
@Controller("/api/v1/events")
@Requires(beans = Happenings.class)
@Tag(name = "events")
class EventRoutes {
    private final LiveEvents events;

    EventRoutes(LiveEvents events) {
        this.events = events;
    }

    /**
     * Server-sent events. The first comes at once: hello, or reset where something was missed that is no longer remembered; then
     * look at the rack anew. What happens follows as happening; a comment every 15 s shows that the line is up. Send the id of the
     * last event as Last-Event-ID to miss nothing after a broken connection; browsers do so by themselves.
     *
     * @param last id of the last event that was got
     */
    @Get(produces = MediaType.TEXT_EVENT_STREAM)
    @ApiResponse(
            responseCode = "200",
            description = "As long as both sides want",
            content =
                    @Content(
                            mediaType = MediaType.TEXT_EVENT_STREAM,
                            schema = @Schema(implementation = HappeningAnswer.class)))
    @ApiResponse(
            responseCode = "5XX",
            description = "Failed, or too many listen already",
            content =
                    @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
    Publisher<Event<?>> events(@Nullable @Header("Last-Event-ID") String last) {
        return events.place(last)
                .orElseThrow(() -> new ProblemException(
                        ProblemKind.TOO_MANY_LISTENERS, "There are " + LiveEvents.MOST + " listeners already."));
    }
}
