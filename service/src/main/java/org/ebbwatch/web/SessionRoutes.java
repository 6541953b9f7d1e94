package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpRequest;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.annotation.Body;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Delete;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Post;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import org.ebbwatch.web.SignedIn.Begun;
import org.ebbwatch.web.answer.SessionAnswer;
import org.ebbwatch.web.ask.SignInAsked;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Signing in: a browser shows the operator's token once and is known by a cookie from then on. */
@Controller(SessionRoutes.PATH)
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "200", description = "As it stands", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "Refused; nothing was done",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "session")
class SessionRoutes {
    static final String PATH = "/api/v1/session";

    private final SignedIn signedIn;

    SessionRoutes(SignedIn signedIn) {
        this.signedIn = signedIn;
    }

    /** Whether this browser is signed in. */
    @Get
    SessionAnswer session(HttpRequest<?> request) {
        return SessionAnswer.until(signedIn.until(request));
    }

    /**
     * Signs this browser in.
     *
     * @param body the token, as it was shown
     */
    @Post
    HttpResponse<SessionAnswer> signIn(
            HttpRequest<?> request,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = SignInAsked.class)))
                    @Nullable @Body
                    String body)
            throws IOException {
        String token = Objects.requireNonNull(SignInAsked.read(body).token());
        Begun begun = signedIn.begin(request, token)
                .orElseThrow(() -> new ProblemException(
                        ProblemKind.NO_TOKEN, "The token is not the operator's, or is no longer."));
        return HttpResponse.ok(SessionAnswer.until(Optional.of(begun.untilMillis())))
                .cookie(begun.cookie());
    }

    /** Signs this browser out. */
    @Delete
    HttpResponse<SessionAnswer> signOut(HttpRequest<?> request) throws IOException {
        return HttpResponse.ok(SessionAnswer.NONE).cookie(signedIn.end(request));
    }
}
