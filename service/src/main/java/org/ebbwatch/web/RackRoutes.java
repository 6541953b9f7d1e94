package org.ebbwatch.web;

import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.ebbwatch.web.answer.BoardAnswer;
import org.ebbwatch.web.answer.ChannelAnswer;
import org.ebbwatch.web.answer.Rack;
import org.ebbwatch.web.answer.RackAnswer;
import org.ebbwatch.web.answer.RackFinding;
import org.ebbwatch.web.problem.Problem;

/** The rack as a whole. */
@Controller("/api/v1")
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
@Tag(name = "rack")
class RackRoutes {
    private final Rack rack;

    RackRoutes(Rack rack) {
        this.rack = rack;
    }

    /** The rack at this moment: boards, channels with their latest readings, and the passages that are not over. */
    @Get("/rack")
    RackAnswer rack() {
        return rack.now();
    }

    /** Every board, and how old its last scan is. */
    @Get("/boards")
    List<BoardAnswer> boards() {
        return rack.boards();
    }

    /** Every channel with its latest reading. */
    @Get("/channels")
    List<ChannelAnswer> channels() {
        return rack.channels();
    }

    /** The findings that stand on the whole rack, urgent first. */
    @Get("/findings")
    List<RackFinding> findings() {
        return rack.findings();
    }
}
