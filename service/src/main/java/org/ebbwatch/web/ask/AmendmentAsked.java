package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import org.ebbwatch.intake.IntakeRequest;
import org.ebbwatch.intake.IntakeRequest.Amend;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;

/**
 * Something new for a cell's card: what is given replaces what stands there, the rest stays. What stood there is kept.
 *
 * @param reason why; needed where something is overwritten and not only a blank filled
 * @param chemistry of the cell
 * @param cellsInSeries 1 for a single cell
 * @param ratedAmpereHours the maker's rating of one cell when new
 * @param origin where it came from
 * @param condition how it is now; one that was torn, leaking or smelling stays that
 * @param protectionBoard whether one is in front of it
 * @param measuredVolts at rest, across the whole
 * @param voltsExplained why volts that do not fit are right all the same; said anew with new volts
 * @param massBeforeGrams as it came
 * @param massAfterGrams when it was emptied
 * @param thicknessBeforeMillimetres as it came, at its thickest
 * @param thicknessAfterMillimetres when it was emptied
 * @param note whatever else
 * @param by who writes; operator where nothing is said
 */
@Serdeable
public record AmendmentAsked(
        @Nullable @Schema(maxLength = 1000) String reason,
        @Nullable IntakeAsked.Kind chemistry,
        @Nullable @Schema(minimum = "1", maximum = "100") Integer cellsInSeries,
        @Nullable @Schema(minimum = "0.01", maximum = "1000") Double ratedAmpereHours,
        @Nullable @Schema(maxLength = 1000) String origin,
        @Nullable Condition condition,
        @Nullable ProtectionBoard protectionBoard,
        @Nullable @Schema(minimum = "-500", maximum = "500") Double measuredVolts,
        @Nullable @Schema(maxLength = 1000) String voltsExplained,
        @Nullable @Schema(minimum = "0.1", maximum = "100000") Double massBeforeGrams,
        @Nullable @Schema(minimum = "0.1", maximum = "100000") Double massAfterGrams,
        @Nullable @Schema(minimum = "0.1", maximum = "1000") Double thicknessBeforeMillimetres,
        @Nullable @Schema(minimum = "0.1", maximum = "1000") Double thicknessAfterMillimetres,
        @Nullable @Schema(maxLength = 1000) String note,
        @Nullable @Schema(maxLength = 100) String by) {

    /** Reads the body. */
    public static Amend read(@Nullable String text, String tag, int seen) {
        Body body = Body.of(text, CardFields.names("reason", "by"));
        return new Amend(
                tag,
                seen,
                CardFields.read(body),
                body.isGiven("reason") ? body.line("reason", IntakeRequest.LONGEST_TEXT) : "",
                IntakeAsked.by(body));
    }
}
