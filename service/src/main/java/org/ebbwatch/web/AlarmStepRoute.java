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
import org.ebbwatch.alarm.AlarmReply.Done;
import org.ebbwatch.alarm.AlarmRequests;
import org.ebbwatch.web.answer.AlarmReceiptAnswer;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.ask.StepAsked;
import org.ebbwatch.web.problem.Problem;

/** What people do about alarms. Each request is done wholly, once for its key, or not at all. */
@Controller("/api/v1/alarms")
@Requires(beans = AlarmRequests.class)
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
@Tag(name = "alarms")
class AlarmStepRoute {
    private final AlarmRequests requests;

    AlarmStepRoute(AlarmRequests requests) {
        this.requests = requests;
    }

    /**
     * Acknowledges, shelves or resets an alarm, or takes it out of service; or brings it back into view.
     *
     * @param id as the list of alarms gives it
     * @param seen the ETag of the alarm as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body which step, and who asks
     */
    @Post("/{id}/steps")
    HttpResponse<AlarmReceiptAnswer> step(
            UUID id,
            @Parameter(required = true) @Header(name = HttpHeaders.IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = StepAsked.class)))
                    @Nullable @Body
                    String body) {
        var request = StepAsked.read(body, id, Guard.seen(seen));
        Done done = AlarmRefusals.done(requests.ask(request, Guard.key(key)));
        return HttpResponse.ok(AlarmReceiptAnswer.of(done))
                .header(HttpHeaders.ETAG, Guard.tag(done.receipt().sequence()));
    }
}
