package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Arrays;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmRequest;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.alarm.book.AlarmStep;

/**
 * What a person does about an alarm.
 *
 * @param step one of those the alarm names as allowed
 * @param by who; "operator" where nothing is said
 * @param reason why; with SHELVED and TAKEN_OUT_OF_SERVICE, and only with them
 * @param minutes for how long; with SHELVED, and only with it
 */
@Serdeable
public record StepAsked(
        AlarmStep step,
        @Nullable @Schema(maxLength = 100) String by,
        @Nullable @Schema(maxLength = 1000) String reason,
        @Nullable @Schema(minimum = "1", maximum = "1440") Integer minutes) {
    private static final String OPERATOR = "operator";
    private static final Set<AlarmStep> PUT_AWAY = Set.of(AlarmStep.SHELVED, AlarmStep.TAKEN_OUT_OF_SERVICE);
    private static final AlarmStep[] A_PERSONS =
            Arrays.stream(AlarmStep.values()).filter(AlarmStep::isAPersons).toArray(AlarmStep[]::new);

    /** Reads the body. */
    public static AlarmRequest read(@Nullable String text, UUID alarm, long seen) {
        Body body = Body.of(text, "step", "by", "reason", "minutes");
        AlarmStep step = body.choice("step", A_PERSONS, AlarmStep::name);
        if (body.isGiven("reason") && !PUT_AWAY.contains(step)) {
            throw Body.bad("reason belongs to SHELVED and TAKEN_OUT_OF_SERVICE alone, not to " + step + '.');
        }
        if (body.isGiven("minutes") && step != AlarmStep.SHELVED) {
            throw Body.bad("minutes belong to SHELVED alone, not to " + step + '.');
        }
        return new AlarmRequest(
                alarm,
                seen,
                step,
                body.isGiven("by") ? body.line("by", AlarmBook.LONGEST_NAME) : OPERATOR,
                PUT_AWAY.contains(step) ? body.line("reason", AlarmBook.LONGEST_REASON) : "",
                step == AlarmStep.SHELVED
                        ? body.whole("minutes", (int) AlarmBook.SHORTEST_SHELVING.toMinutes(), (int)
                                AlarmBook.LONGEST_SHELVING.toMinutes())
                        : 0);
    }
}
