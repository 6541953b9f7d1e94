package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.annotation.Body;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
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
import java.util.Objects;
import java.util.UUID;
import org.ebbwatch.evening.EveningChecks;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.web.answer.EveningCheckAnswer;
import org.ebbwatch.web.answer.EveningChecksAnswer;
import org.ebbwatch.web.ask.EveningAsked;
import org.ebbwatch.web.ask.EveningStepAsked;
import org.ebbwatch.web.ask.EveningStepAsked.Step;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Evening checks: whether what can be proven is proven before the rack is left for the night. */
@Controller("/api/v1/evening-checks")
@Requires(beans = EveningChecks.class)
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
@Tag(name = "evening")
class EveningRoutes {
    private final EveningChecks checks;

    EveningRoutes(EveningChecks checks) {
        this.checks = checks;
    }

    /** The last ten checks, newest first. */
    @Get
    EveningChecksAnswer evenings() {
        return EveningChecksAnswer.of(checks.evenings());
    }

    /**
     * One check.
     *
     * @param id as the list of checks gives it
     */
    @Get("/{id}")
    EveningCheckAnswer evening(UUID id) {
        return EveningCheckAnswer.of(checks.evening(id).orElseThrow(() -> unknown(id)));
    }

    /**
     * Starts a check: loads answer, leads are checked, sensors may be held, a test alarm leaves. One runs at a time.
     *
     * @param key made by the sender, 8 to 200 characters, another one for each check
     * @param body who asks, and for how long sensors are going to be held
     */
    @Post
    @SecurityRequirement(name = "operator")
    EveningCheckAnswer start(
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = EveningAsked.class)))
                    @Nullable @Body
                    String body) {
        EveningAsked asked = EveningAsked.read(body);
        return done(checks.startEvening(
                Objects.requireNonNull(asked.by()), Objects.requireNonNull(asked.touchMinutes()), Guard.key(key)));
    }

    /**
     * Says that the test alarm arrived, or ends the check. Either may be said again without harm, so neither takes a key.
     *
     * @param id of the check
     * @param body which
     */
    @Post("/{id}/steps")
    @SecurityRequirement(name = "operator")
    EveningCheckAnswer eveningStep(
            UUID id,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = EveningStepAsked.class)))
                    @Nullable @Body
                    String body) {
        EveningStepAsked asked = EveningStepAsked.read(body);
        return done(
                asked.step() == Step.HEARD
                        ? checks.heardBy(id, Objects.requireNonNull(asked.outlet()), Objects.requireNonNull(asked.by()))
                        : checks.finishEvening(id));
    }

    private static EveningCheckAnswer done(EveningReply reply) {
        if (reply instanceof EveningReply.Done done) {
            return EveningCheckAnswer.of(done.check());
        }
        throw refusal(reply);
    }

    private static ProblemException refusal(EveningReply reply) {
        if (reply instanceof EveningReply.Busy busy) {
            return new ProblemException(
                    ProblemKind.CHECK_RUNS, "The check " + busy.running().id() + " runs.");
        }
        if (reply instanceof EveningReply.Over over) {
            return new ProblemException(
                    ProblemKind.CHECK_OVER, "The check " + over.check().id() + " is over.");
        }
        if (reply instanceof EveningReply.UnknownOutlet unknown) {
            String there = unknown.outlets().isEmpty() ? "none" : String.join(", ", unknown.outlets());
            return new ProblemException(
                    ProblemKind.BAD_BODY, "outlet cannot be \"" + unknown.outlet() + "\"; there are: " + there + '.');
        }
        if (reply instanceof EveningReply.Unknown unknown) {
            return unknown(unknown.check());
        }
        throw new IllegalStateException("no problem is made of " + reply);
    }

    private static ProblemException unknown(UUID id) {
        return new ProblemException(ProblemKind.UNKNOWN_CHECK, "There is no evening check " + id + '.');
    }
}
