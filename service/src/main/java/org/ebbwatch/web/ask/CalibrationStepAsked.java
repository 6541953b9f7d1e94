package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.Set;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.passage.CalibrationSpot;

/**
 * The next step of a calibration.
 *
 * @param step which
 * @param volts what the meter shows at the channel's leads; LOW and HIGH alone
 * @param by who withdraws; "operator" where nothing is said
 * @param reason why it is withdrawn; WITHDRAWN alone
 */
@Serdeable
public record CalibrationStepAsked(
        @Schema(requiredMode = RequiredMode.REQUIRED) Step step,
        @Nullable @Schema(minimum = "0.3", maximum = "4.5") Double volts,
        @Nullable @Schema(maxLength = 100) String by,
        @Nullable @Schema(maxLength = 1000) String reason) {
    private static final String OPERATOR = "operator";
    private static final int LONGEST_REASON = 1_000;
    private static final Set<Step> MEASURED = Set.of(Step.LOW, Step.HIGH);

    /** What is done. */
    public enum Step {
        /** The channel's two leads are clipped together, with no cell on them. */
        SHORTED,
        /** About 0.5 V is on the leads. */
        LOW,
        /** About 4 V is on the leads. */
        HIGH,
        /** What was found is kept, and goes for this channel. */
        KEPT,
        /** Nothing is kept. */
        GIVEN_UP,
        /** One that was kept was found wrong. */
        WITHDRAWN;

        /** The point it takes; null for another step. */
        @Nullable public CalibrationSpot spot() {
            return switch (this) {
                case SHORTED -> CalibrationSpot.SHORTED;
                case LOW -> CalibrationSpot.LOW;
                case HIGH -> CalibrationSpot.HIGH;
                case KEPT, GIVEN_UP, WITHDRAWN -> null;
            };
        }
    }

    /** Reads the body. */
    public static CalibrationStepAsked read(@Nullable String text) {
        Body body = Body.of(text, "step", "volts", "by", "reason");
        Step step = body.choice("step", Step.values(), Step::name);
        if (!MEASURED.contains(step) && body.isGiven("volts")) {
            throw Body.bad("volts belongs to LOW and HIGH alone, not to " + step + '.');
        }
        return new CalibrationStepAsked(
                step,
                MEASURED.contains(step) ? body.number("volts", 0, CalibrationSpot.HIGH.mostVolts()) : null,
                body.isGiven("by") ? body.line("by", AlarmBook.LONGEST_NAME) : OPERATOR,
                step == Step.WITHDRAWN ? body.line("reason", LONGEST_REASON) : null);
    }
}
