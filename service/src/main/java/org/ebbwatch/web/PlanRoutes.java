package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.ZoneId;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.plan.Plan;
import org.ebbwatch.web.answer.PlanAnswer;
import org.ebbwatch.web.problem.Problem;

/** When somebody must be there. */
@Controller("/api/v1/plan")
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
@Tag(name = "plan")
class PlanRoutes {
    private final RackSource source;
    private final HostClock clock;
    private final NightHours night;

    PlanRoutes(RackSource source, HostClock clock, @Nullable NightHours night) {
        this.source = source;
        this.clock = clock;
        this.night = night == null ? NightHours.usual(ZoneId.systemDefault()) : night;
    }

    /** For every open passage the next thing a person is wanted for, and when. Nothing that can wait is asked for at night. */
    @Get
    PlanAnswer plan() {
        return PlanAnswer.of(Plan.of(source.view(), night, clock.now().wallMillis()));
    }
}
