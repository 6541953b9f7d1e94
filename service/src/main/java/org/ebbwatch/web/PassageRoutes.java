package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.QueryValue;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.web.answer.ClosedPassages;
import org.ebbwatch.web.answer.PassageAnswer;
import org.ebbwatch.web.answer.PassageShort;
import org.ebbwatch.web.answer.Rack;
import org.ebbwatch.web.answer.RestPredictionAnswer;
import org.ebbwatch.web.answer.TraceAnswer;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Passages: one cell's way each, from check-in to release or withdrawal. */
@Controller("/api/v1/passages")
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
@Tag(name = "passages")
class PassageRoutes {
    private static final int LEAST_POINTS = 10;
    private static final int MOST_POINTS = 10_000;
    private static final int MOST_CLOSED = 200;

    private final Rack rack;

    PassageRoutes(Rack rack) {
        this.rack = rack;
    }

    /**
     * The passages in short, open or over. Those that were over before the service started are told at /closed.
     *
     * @param phase only those in this phase
     */
    @Get
    List<PassageShort> passages(@Nullable @QueryValue Phase phase) {
        return rack.passages(phase);
    }

    /**
     * The passages that are over, as the records tell them, the one opened last first, page by page.
     *
     * @param before only those opened before the passage with that id, which is next of the page before
     * @param limit how many at most, 1 to 200
     */
    @Get("/closed")
    ClosedPassages closed(
            @Nullable @QueryValue UUID before,
            @Parameter(required = false, schema = @Schema(minimum = "1", maximum = "200"))
                    @QueryValue(defaultValue = "50")
                    int limit) {
        requireWithin("limit", limit, 1, MOST_CLOSED);
        return rack.closed(before, limit);
    }

    /**
     * One passage in full: its findings, what it waits for, and its past. The header ETag is what acting on it asks for as If-Match.
     *
     * @param id as the list of passages gives it
     */
    @Get("/{id}")
    HttpResponse<PassageAnswer> passage(UUID id) {
        PassageAnswer passage = rack.passage(id).orElseThrow(() -> unknown(id));
        return HttpResponse.ok(passage)
                .header(HttpHeaders.ETAG, Guard.tag(passage.passage().sequence()));
    }

    /**
     * The trace of a passage so far, or to its end, thinned out so that no peak is lost.
     *
     * @param id as the list of passages gives it
     * @param from only from this event time on, in milliseconds; from its opening where nothing is said
     * @param to only up to this event time
     * @param points about how many, 10 to 10000
     */
    @Get("/{id}/trace")
    TraceAnswer trace(
            UUID id,
            @Nullable @QueryValue Long from,
            @Nullable @QueryValue Long to,
            @Parameter(required = false, schema = @Schema(minimum = "10", maximum = "10000"))
                    @QueryValue(defaultValue = "1000")
                    int points) {
        requireWithin("points", points, LEAST_POINTS, MOST_POINTS);
        return rack.trace(id, window(from, to), points).orElseThrow(() -> unknown(id));
    }

    /**
     * What the voltage of a resting cell is expected to be at the end of its rest, for people to look at: it passes no cell. 204
     * where the passage does not rest, or has too few readings for it yet.
     *
     * @param id as the list of passages gives it
     */
    @Get("/{id}/rest-prediction")
    @ApiResponse(responseCode = "204", description = "There is nothing to say yet")
    HttpResponse<RestPredictionAnswer> restPrediction(UUID id) {
        return rack.restPrediction(id).map(HttpResponse::ok).orElseGet(HttpResponse::noContent);
    }

    private static Window window(@Nullable Long from, @Nullable Long to) {
        long first = from == null ? Window.ALL.fromMillis() : from;
        long last = to == null ? Window.ALL.toMillis() : to;
        if (last < first) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER, "from is " + first + ", later than to, which is " + last + '.');
        }
        return new Window(first, last);
    }

    private static void requireWithin(String what, int given, int least, int most) {
        if (given < least || given > most) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER,
                    what + " cannot be " + given + "; it takes " + least + " to " + most + '.');
        }
    }

    private static ProblemException unknown(UUID id) {
        return new ProblemException(ProblemKind.UNKNOWN_PASSAGE, "There is no passage " + id + '.');
    }
}
