package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.MediaType;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.QueryValue;
import io.micronaut.http.server.types.files.StreamedFile;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.handover.HandOverDesk;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Bundles and papers of cells that are handed over. */
@Controller("/api/v1/hand-over")
@Requires(beans = HandOverDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@Tag(name = "passages")
class HandOverRoute {
    private final HandOverDesk desk;

    HandOverRoute(HandOverDesk desk) {
        this.desk = desk;
    }

    /**
     * A ZIP file to download: covering sheet, table, labels, and the sealed bundle of each passage. Those that are not over are in it as
     * such, to be treated as charged.
     *
     * @param passage ids of 1 to 50 passages, repeated or with commas between
     */
    @Get(produces = "application/zip")
    @ApiResponse(
            responseCode = "200",
            description = "The hand-over",
            content = @Content(mediaType = "application/zip", schema = @Schema(type = "string", format = "binary")))
    @ApiResponse(
            responseCode = "4XX",
            description = "Refused",
            content =
                    @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
    StreamedFile handOver(@QueryValue List<UUID> passage) throws IOException {
        try {
            return new StreamedFile(desk.make(passage), MediaType.of("application/zip")).attach("hand-over.zip");
        } catch (IllegalArgumentException e) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER, "The hand-over cannot be made: " + e.getMessage() + '.');
        }
    }
}
