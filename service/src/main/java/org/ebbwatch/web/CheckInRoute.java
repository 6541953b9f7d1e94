package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.annotation.Body;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Header;
import io.micronaut.http.annotation.Post;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.web.answer.ReceiptAnswer;
import org.ebbwatch.web.ask.CheckInAsked;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;

/** Where a passage begins. */
@Controller("/api/v1/passages")
@Requires(beans = RackDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "201", description = "Opened; Location names it", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused; nothing was done",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@SecurityRequirement(name = "operator")
@Tag(name = "desk")
class CheckInRoute {
    private final RackDesk desk;

    CheckInRoute(RackDesk desk) {
        this.desk = desk;
    }

    /**
     * Checks a cell in: opens a passage for the cell on a channel.
     *
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body the cell and its channel
     */
    @Post
    HttpResponse<ReceiptAnswer> checkIn(
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = CheckInAsked.class)))
                    @Nullable @Body
                    String body) {
        String itsKey = Guard.key(key);
        Done done = Refusals.done(desk.ask(CheckInAsked.read(body), itsKey));
        URI location = URI.create("/api/v1/passages/" + done.receipt().passage());
        return HttpResponse.created(ReceiptAnswer.of(done), location)
                .header(HttpHeaders.ETAG, Guard.tag(done.receipt().sequence()));
    }
}
