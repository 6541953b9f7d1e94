package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import org.ebbwatch.alarm.book.AlarmBook;

/**
 * What a person does about an evening check that runs.
 *
 * @param step which
 * @param outlet by which the test alarm arrived; with HEARD, and only with it
 * @param by who; "operator" where nothing is said
 */
@Serdeable
public record EveningStepAsked(
        Step step, @Nullable @Schema(maxLength = 100) String outlet, @Nullable @Schema(maxLength = 100) String by) {
    private static final String OPERATOR = "operator";

    /** A step. */
    public enum Step {
        /** The test alarm arrived by an outlet. */
        HEARD,
        /** The check is over; what is not proven stays so. */
        FINISHED
    }

    /** Reads the body. */
    public static EveningStepAsked read(@Nullable String text) {
        Body body = Body.of(text, "step", "outlet", "by");
        Step step = body.choice("step", Step.values(), Step::name);
        if (step == Step.FINISHED && body.isGiven("outlet")) {
            throw Body.bad("outlet belongs to HEARD alone, not to FINISHED.");
        }
        return new EveningStepAsked(
                step,
                step == Step.HEARD ? body.line("outlet", AlarmBook.LONGEST_NAME) : null,
                body.isGiven("by") ? body.line("by", AlarmBook.LONGEST_NAME) : OPERATOR);
    }
}
