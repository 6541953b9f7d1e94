package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
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
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmHistory;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmRates;
import org.ebbwatch.web.answer.AlarmRatesAnswer;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Whether people can still heed the alarms. */
@Controller("/api/v1/alarms/rates")
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
@Tag(name = "alarms")
class AlarmRatesRoute {
    private static final int MOST_HOURS = 8_784;
    private static final long HOUR_MILLIS = 3_600_000;

    private final AlarmSource alarms;
    private final AlarmHistory history;
    private final HostClock clock;

    AlarmRatesRoute(AlarmSource alarms, AlarmHistory history, HostClock clock) {
        this.alarms = alarms;
        this.history = history;
        this.clock = clock;
    }

    /**
     * How often alarms were raised, how many stand and how long, against the figures usual for one person.
     *
     * @param hours over how many hours back from now, 1 to 8784
     */
    @Get
    AlarmRatesAnswer rates(
            @Parameter(required = false, schema = @Schema(minimum = "1", maximum = "8784"))
                    @QueryValue(defaultValue = "168")
                    int hours) {
        if (hours < 1 || hours > MOST_HOURS) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER, "hours cannot be " + hours + "; it takes 1 to " + MOST_HOURS + '.');
        }
        long to = clock.now().wallMillis() + 1;
        long from = to - hours * HOUR_MILLIS;
        List<Long> standing = alarms.alarms().alarms().stream()
                .filter(alarm -> alarm.state().isActive())
                .map(AlarmView::raisedWallMillis)
                .toList();
        return AlarmRatesAnswer.of(AlarmRates.of(history.raisedSince(from), standing, from, to));
    }
}
