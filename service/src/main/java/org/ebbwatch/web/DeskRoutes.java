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
import java.util.UUID;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskRequest;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.web.answer.ReceiptAnswer;
import org.ebbwatch.web.ask.ActAsked;
import org.ebbwatch.web.ask.AnnouncementAsked;
import org.ebbwatch.web.ask.BlinkAsked;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.ask.LoadAsked;
import org.ebbwatch.web.ask.MeterAsked;
import org.ebbwatch.web.ask.MoveAsked;
import org.ebbwatch.web.problem.Problem;

/** What people do to passages. Each request is done wholly, once for its key, or not at all. */
@Controller("/api/v1/passages")
@Requires(beans = RackDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "200", description = "Done", useReturnTypeSchema = true)
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
class DeskRoutes {
    private static final String IF_MATCH = HttpHeaders.IF_MATCH;
    private static final String KEY = Guard.KEY;

    private final RackDesk desk;

    DeskRoutes(RackDesk desk) {
        this.desk = desk;
    }

    /**
     * Something was done to the cell, or is to be done by the board, or a person decides.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body which act
     */
    @Post("/{id}/acts")
    HttpResponse<ReceiptAnswer> act(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = ActAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(ActAsked.read(body, id, Guard.seen(seen)), key);
    }

    /**
     * A meter was held to the cell's own terminals.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body what it shows
     */
    @Post("/{id}/meter-readings")
    HttpResponse<ReceiptAnswer> meter(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = MeterAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(MeterAsked.read(body, id, Guard.seen(seen)), key);
    }

    /**
     * Work at the channel is about to begin.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body which work, and how long
     */
    @Post("/{id}/announcements")
    HttpResponse<ReceiptAnswer> announce(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(
                            required = true,
                            content = @Content(schema = @Schema(implementation = AnnouncementAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(AnnouncementAsked.read(body, id, Guard.seen(seen)), key);
    }

    /**
     * The cell was put onto another channel of its board.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body which channel
     */
    @Post("/{id}/moves")
    HttpResponse<ReceiptAnswer> move(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = MoveAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(MoveAsked.read(body, id, Guard.seen(seen)), key);
    }

    /**
     * A cell that left its string finishes singly, on a load of its own.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body which load
     */
    @Post("/{id}/loads")
    HttpResponse<ReceiptAnswer> load(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = LoadAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(LoadAsked.read(body, id, Guard.seen(seen)), key);
    }

    /**
     * Lets the lamp at the cell's channel blink, so that it is found.
     *
     * @param id as the list of passages gives it
     * @param seen the ETag of the passage as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body how long
     */
    @Post("/{id}/blinks")
    HttpResponse<ReceiptAnswer> blink(
            UUID id,
            @Parameter(required = true) @Header(name = IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = BlinkAsked.class)))
                    @Nullable @Body
                    String body) {
        return ask(BlinkAsked.read(body, id, Guard.seen(seen)), key);
    }

    private HttpResponse<ReceiptAnswer> ask(DeskRequest request, String key) {
        Done done = Refusals.done(desk.ask(request, Guard.key(key)));
        return HttpResponse.ok(ReceiptAnswer.of(done))
                .header(HttpHeaders.ETAG, Guard.tag(done.receipt().sequence()));
    }
}
