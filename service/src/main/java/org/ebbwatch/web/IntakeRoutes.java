package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.annotation.Body;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Header;
import io.micronaut.http.annotation.Post;
import io.micronaut.http.annotation.QueryValue;
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
import java.util.List;
import org.ebbwatch.intake.IntakeDesk;
import org.ebbwatch.intake.IntakeRecord;
import org.ebbwatch.web.answer.IntakeAnswer;
import org.ebbwatch.web.answer.IntakesAnswer;
import org.ebbwatch.web.ask.AmendmentAsked;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.ask.IntakeAsked;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Cards of cells: what is written down of a cell before it comes to the rack. */
@Controller("/api/v1/intakes")
@Requires(beans = IntakeDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "200", description = "As it stands", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused; nothing was written",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "intake")
class IntakeRoutes {
    private static final int MOST = 200;

    private final IntakeDesk desk;

    IntakeRoutes(IntakeDesk desk) {
        this.desk = desk;
    }

    /**
     * Takes a cell in: writes its card and says whether it may go onto the rack. A cell that may not has its card all the same.
     *
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body what is known of the cell
     */
    @Post
    @ApiResponse(responseCode = "201", description = "Written; Location names it", useReturnTypeSchema = true)
    @SecurityRequirement(name = "operator")
    HttpResponse<IntakeAnswer> takeIn(
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = IntakeAsked.class)))
                    @Nullable @Body
                    String body) {
        String itsKey = Guard.key(key);
        IntakeRecord record = IntakeRefusals.done(desk.ask(IntakeAsked.read(body), itsKey));
        URI location = URI.create("/api/v1/intakes/" + IntakeAnswer.inPath(record.tag()));
        return HttpResponse.created(IntakeAnswer.of(record), location).header(HttpHeaders.ETAG, tag(record));
    }

    /**
     * Cards, the one taken in last first, page by page.
     *
     * @param before only those taken in before the card with that tag, which is next of the page before
     * @param limit how many at most, 1 to 200
     */
    @Get
    IntakesAnswer cards(
            @Nullable @QueryValue String before,
            @Parameter(required = false, schema = @Schema(minimum = "1", maximum = "200"))
                    @QueryValue(defaultValue = "50")
                    int limit) {
        if (limit < 1 || limit > MOST) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER, "limit cannot be " + limit + "; it takes 1 to " + MOST + '.');
        }
        List<IntakeRecord> all = desk.records().latest();
        List<IntakeRecord> page = before == null ? all : after(before, all);
        return new IntakesAnswer(
                page.stream().limit(limit).map(IntakeAnswer::of).toList(),
                page.size() > limit ? page.get(limit - 1).tag() : null);
    }

    private static List<IntakeRecord> after(String tag, List<IntakeRecord> all) {
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).tag().equals(tag)) {
                return all.subList(i + 1, all.size());
            }
        }
        throw IntakeRefusals.unknown(tag);
    }

    /**
     * One card with all that was ever written on it. The header ETag is what writing on it asks for as If-Match.
     *
     * @param tag of the cell
     */
    @Get("/{tag}")
    HttpResponse<IntakeAnswer> card(String tag) {
        return answer(desk.records().tagged(tag).orElseThrow(() -> IntakeRefusals.unknown(tag)));
    }

    /**
     * Writes something new on a card; what stood there is kept.
     *
     * @param tag of the cell
     * @param seen the ETag of the card as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param body what is new
     */
    @Post("/{tag}/amendments")
    @SecurityRequirement(name = "operator")
    HttpResponse<IntakeAnswer> amend(
            String tag,
            @Parameter(required = true) @Header(name = HttpHeaders.IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = AmendmentAsked.class)))
                    @Nullable @Body
                    String body) {
        String itsKey = Guard.key(key);
        return answer(IntakeRefusals.done(
                desk.ask(AmendmentAsked.read(body, tag, Math.toIntExact(Guard.seen(seen))), itsKey)));
    }

    private static HttpResponse<IntakeAnswer> answer(IntakeRecord record) {
        return HttpResponse.ok(IntakeAnswer.of(record)).header(HttpHeaders.ETAG, tag(record));
    }

    static String tag(IntakeRecord record) {
        return Guard.tag(record.last().number());
    }
}
