package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.evening.EveningChecks;

/**
 * An evening check to be started.
 *
 * @param by who; "operator" where nothing is said
 * @param touchMinutes for how long sensors are going to be held; 10 where nothing is said, 0: nobody will
 */
@Serdeable
public record EveningAsked(
        @Nullable @Schema(maxLength = 100) String by,
        @Nullable @Schema(minimum = "0", maximum = "30") Integer touchMinutes) {
    private static final String OPERATOR = "operator";
    private static final int USUAL_MINUTES = 10;

    /** Reads the body. */
    public static EveningAsked read(@Nullable String text) {
        Body body = Body.of(text, "by", "touchMinutes");
        return new EveningAsked(
                body.isGiven("by") ? body.line("by", AlarmBook.LONGEST_NAME) : OPERATOR,
                body.isGiven("touchMinutes")
                        ? body.whole("touchMinutes", 0, EveningChecks.MOST_TOUCH_MINUTES)
                        : USUAL_MINUTES);
    }
}
