package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.HttpStatus;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Post;
import io.micronaut.http.annotation.Status;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import org.ebbwatch.archive.Backups;
import org.ebbwatch.web.answer.BackupAnswer;
import org.ebbwatch.web.problem.Problem;

/** Backups of the records, made by the service beside them while it goes on watching. */
@Controller("/api/v1/backups")
@Requires(beans = Backups.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "201", description = "Made", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused; nothing was done",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed; nothing of it is left",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "rack")
class BackupRoute {
    private final Backups backups;

    BackupRoute(Backups backups) {
        this.backups = backups;
    }

    /** Backs up all records into the folder `backups` beside them; what it is made of never leaves this machine by this way. */
    @Post
    @Status(HttpStatus.CREATED)
    BackupAnswer backUp() throws IOException {
        return BackupAnswer.of(backups.make());
    }
}
