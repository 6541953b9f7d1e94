package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.QueryValue;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmHistory;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.morning.MorningFacts;
import org.ebbwatch.morning.MorningHour;
import org.ebbwatch.morning.MorningReport;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.plan.Plan;
import org.ebbwatch.web.answer.MorningAnswer;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** What happened overnight. */
@Controller("/api/v1/morning-report")
@Requires(beans = {AlarmSource.class, AlarmHistory.class})
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
class MorningRoute {
    private static final long LONGEST_MILLIS = 31L * 86_400_000;

    private final RackSource rack;
    private final AlarmSource alarms;
    private final AlarmHistory history;
    private final HostClock clock;
    private final NightHours night;

    MorningRoute(
            RackSource rack, AlarmSource alarms, AlarmHistory history, HostClock clock, @Nullable NightHours night) {
        this.rack = rack;
        this.alarms = alarms;
        this.history = history;
        this.clock = clock;
        this.night = night == null ? NightHours.usual(ZoneId.systemDefault()) : night;
    }

    /**
     * What happened on the rack since the evening, what each cell waits for, and what to do today.
     *
     * @param since RFC 3339, at most 31 days ago; when left out, the time at which the last night began
     */
    @Get
    MorningAnswer report(@Nullable @QueryValue String since) {
        long now = clock.now().wallMillis();
        long evening = since == null ? MorningHour.eveningBefore(night, now) : parsed(since, now);
        RackView view = rack.view();
        return MorningAnswer.of(
                MorningReport.of(new MorningFacts(
                        view,
                        Plan.of(view, night, now),
                        alarms.alarms().alarms(),
                        history.raisedSince(evening),
                        evening,
                        now)),
                night.zone());
    }

    private static long parsed(String since, long now) {
        try {
            long millis = Instant.parse(since).toEpochMilli();
            if (millis <= now && now - millis <= LONGEST_MILLIS) {
                return millis;
            }
        } catch (DateTimeParseException | ArithmeticException notATime) {
            // Refused below.
        }
        throw new ProblemException(
                ProblemKind.BAD_PARAMETER,
                "since cannot be \"" + since + "\"; it takes a time of the last 31 days such as 2026-11-24T22:00:00Z.");
    }
}
