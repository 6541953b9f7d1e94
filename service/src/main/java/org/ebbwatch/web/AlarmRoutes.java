package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.web.answer.AlarmAnswer;
import org.ebbwatch.web.answer.AlarmsAnswer;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;

/** The alarm book, to read. */
@Controller("/api/v1/alarms")
@Requires(beans = AlarmSource.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "200", description = "As it stands", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "alarms")
class AlarmRoutes {
    private final AlarmSource source;

    AlarmRoutes(AlarmSource source) {
        this.source = source;
    }

    /** The alarms that are alive, those that need a person most first, and how the outlets do. */
    @Get
    AlarmsAnswer alarms() {
        return AlarmsAnswer.of(source.alarms());
    }

    /**
     * One alarm that is alive. The header ETag is what acting on it asks for as If-Match.
     *
     * @param id as the list of alarms gives it
     */
    @Get("/{id}")
    HttpResponse<AlarmAnswer> alarm(UUID id) {
        AlarmAnswer alarm = source.alarms().alarms().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .map(AlarmAnswer::of)
                .orElseThrow(() -> AlarmRefusals.unknown(id));
        return HttpResponse.ok(alarm).header(HttpHeaders.ETAG, Guard.tag(alarm.sequence()));
    }
}
