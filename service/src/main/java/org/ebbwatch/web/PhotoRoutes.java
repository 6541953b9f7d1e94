package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.MediaType;
import io.micronaut.http.annotation.Body;
import io.micronaut.http.annotation.Consumes;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Header;
import io.micronaut.http.annotation.Post;
import io.micronaut.http.annotation.Produces;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Optional;
import org.ebbwatch.intake.CellPhoto;
import org.ebbwatch.intake.IntakeDesk;
import org.ebbwatch.intake.IntakeRecord;
import org.ebbwatch.intake.IntakeRequest.Photograph;
import org.ebbwatch.web.answer.IntakeAnswer;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Photos of cells. What a camera writes beside the picture is not kept. */
@Controller("/api/v1/intakes/{tag}/photo")
@Requires(beans = IntakeDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused; nothing was written",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "intake")
class PhotoRoutes {
    private static final String OPERATOR = "operator";

    private final IntakeDesk desk;

    PhotoRoutes(IntakeDesk desk) {
        this.desk = desk;
    }

    /**
     * Puts a photo on the card, in place of one that is there; the earlier one is kept too.
     *
     * @param tag of the cell
     * @param seen the ETag of the card as the sender saw it
     * @param key made by the sender, 8 to 200 characters, another one for each request
     * @param content a JPEG or a PNG of at most 6 MiB
     */
    @Post
    @Consumes({MediaType.IMAGE_JPEG, MediaType.IMAGE_PNG})
    @ApiResponse(responseCode = "200", description = "The card with it", useReturnTypeSchema = true)
    @SecurityRequirement(name = "operator")
    HttpResponse<IntakeAnswer> photograph(
            String tag,
            @Parameter(required = true) @Header(name = HttpHeaders.IF_MATCH, defaultValue = "") String seen,
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @Body byte[] content) {
        String itsKey = Guard.key(key);
        IntakeRecord record = IntakeRefusals.done(
                desk.ask(new Photograph(tag, Math.toIntExact(Guard.seen(seen)), content, OPERATOR), itsKey));
        return HttpResponse.ok(IntakeAnswer.of(record)).header(HttpHeaders.ETAG, IntakeRoutes.tag(record));
    }

    /**
     * The photo on the card.
     *
     * @param tag of the cell
     */
    @Get
    @Produces({MediaType.IMAGE_JPEG, MediaType.IMAGE_PNG})
    @ApiResponse(
            responseCode = "200",
            description = "A JPEG or a PNG",
            content = {
                @Content(mediaType = "image/jpeg", schema = @Schema(type = "string", format = "binary")),
                @Content(mediaType = "image/png", schema = @Schema(type = "string", format = "binary"))
            })
    HttpResponse<byte[]> photo(String tag) {
        Optional<CellPhoto> photo = desk.records().tagged(tag).flatMap(desk.records()::photo);
        return photo.map(it ->
                        HttpResponse.ok(it.content()).contentType(it.type().mediaType()))
                .orElseThrow(() ->
                        new ProblemException(ProblemKind.UNKNOWN_CARD, "There is no photo of a cell \"" + tag + "\"."));
    }
}
