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
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.passage.CalibrationReply;
import org.ebbwatch.passage.CalibrationReply.Kept;
import org.ebbwatch.passage.CalibrationReply.Refused;
import org.ebbwatch.passage.CalibrationReply.Running;
import org.ebbwatch.passage.CalibrationSpot;
import org.ebbwatch.passage.Calibrations;
import org.ebbwatch.web.answer.CalibrationStepAnswer;
import org.ebbwatch.web.answer.CalibrationsAnswer;
import org.ebbwatch.web.ask.CalibrationAsked;
import org.ebbwatch.web.ask.CalibrationStepAsked;
import org.ebbwatch.web.ask.Guard;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Calibrating channels against a meter. Leads are shorted, never a cell. */
@Controller("/api/v1/calibrations")
@Requires(beans = Calibrations.class)
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
@Tag(name = "calibration")
class CalibrationRoutes {
    private final Calibrations calibrations;
    private final HostClock clock;

    CalibrationRoutes(Calibrations calibrations, HostClock clock) {
        this.calibrations = calibrations;
        this.clock = clock;
    }

    /** The one under way, and all that were ever kept, newest first. */
    @Get
    CalibrationsAnswer calibrations() {
        return CalibrationsAnswer.of(calibrations, now());
    }

    /**
     * Begins to calibrate a channel on which no cell is. One runs at a time; one that nobody goes on with is given up after half an
     * hour.
     *
     * @param key made by the sender, 8 to 200 characters, another one for each calibration
     * @param body the channel, and the meter it is held against
     */
    @Post
    @SecurityRequirement(name = "operator")
    CalibrationStepAnswer beginCalibration(
            @Parameter(required = true) @Header(name = Guard.KEY, defaultValue = "") String key,
            @RequestBody(required = true, content = @Content(schema = @Schema(implementation = CalibrationAsked.class)))
                    @Nullable @Body
                    String body) {
        CalibrationAsked asked = CalibrationAsked.read(body);
        return done(calibrations.beginCalibration(
                asked.board(), asked.channel(), asked.itsMeter(), Objects.requireNonNull(asked.by()), Guard.key(key)));
    }

    /**
     * Takes a point from the last readings, keeps what was found, gives up, or withdraws one that was kept. Each may be said again
     * without harm, so none takes a key.
     *
     * @param id of the calibration
     * @param body which
     */
    @Post("/{id}/steps")
    @SecurityRequirement(name = "operator")
    CalibrationStepAnswer calibrationStep(
            UUID id,
            @RequestBody(
                            required = true,
                            content = @Content(schema = @Schema(implementation = CalibrationStepAsked.class)))
                    @Nullable @Body
                    String body) {
        CalibrationStepAsked asked = CalibrationStepAsked.read(body);
        CalibrationSpot spot = asked.step().spot();
        if (spot != null) {
            return done(calibrations.takePoint(id, spot, asked.volts() == null ? 0 : asked.volts()));
        }
        return done(
                switch (asked.step()) {
                    case KEPT -> calibrations.keepCalibration(id);
                    case WITHDRAWN ->
                        calibrations.withdrawCalibration(
                                id, Objects.requireNonNull(asked.by()), Objects.requireNonNull(asked.reason()));
                    default -> calibrations.giveUpCalibration(id);
                });
    }

    private long now() {
        return clock.now().wallMillis();
    }

    private CalibrationStepAnswer done(CalibrationReply reply) {
        if (reply instanceof Running running) {
            return CalibrationStepAnswer.of(running.run(), now());
        }
        if (reply instanceof Kept kept) {
            return CalibrationStepAnswer.of(kept.kept(), now());
        }
        if (reply instanceof Refused refused) {
            throw new ProblemException(
                    switch (refused.why()) {
                        case UNKNOWN -> ProblemKind.UNKNOWN_CALIBRATION;
                        case UNKNOWN_BOARD -> ProblemKind.BAD_BODY;
                        case NONSENSE -> ProblemKind.NO_SENSE;
                        case NOT_NOW -> ProblemKind.NOT_READY;
                        case BUSY -> ProblemKind.CALIBRATION_RUNS;
                        case TAKEN -> ProblemKind.TAKEN;
                        case UNABLE -> ProblemKind.UNABLE;
                    },
                    refused.detail());
        }
        return CalibrationStepAnswer.GIVEN_UP;
    }
}
