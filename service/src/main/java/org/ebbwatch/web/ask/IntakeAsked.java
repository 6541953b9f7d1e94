package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.intake.IntakeRequest;
import org.ebbwatch.intake.IntakeRequest.Name;
import org.ebbwatch.intake.IntakeRequest.TakeIn;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;

/**
 * A cell that has come. With like or likeLast its chemistry, cellsInSeries, ratedAmpereHours and origin are those of another card
 * where nothing is said here; condition, protectionBoard and what is measured are said of each cell anew.
 *
 * @param tag the name that is written on the cell; left out, it gets the next free number
 * @param tagPrefix what stands before that number; cell where nothing is said
 * @param like take over what a box has in common from the card with this tag
 * @param likeLast take it over from the card that was taken in last
 * @param chemistry of the cell
 * @param cellsInSeries 1 for a single cell
 * @param ratedAmpereHours the maker's rating of one cell when new
 * @param origin where it came from: a device, a person, a box
 * @param condition the one furthest down the list that applies: INTACT, UNKNOWN, SWOLLEN, DENTED, WET, WARM, CASING_TORN,
 *     SMELL_OF_SOLVENT, LEAKING
 * @param protectionBoard whether one is in front of it
 * @param measuredVolts at rest, across the whole, by a meter at its own terminals; left out with a cell that is better not touched
 * @param voltsExplained why volts that do not fit are right all the same
 * @param massBeforeGrams as it came
 * @param massAfterGrams when it was emptied
 * @param thicknessBeforeMillimetres as it came, at its thickest
 * @param thicknessAfterMillimetres when it was emptied
 * @param note whatever else
 * @param by who takes it in; operator where nothing is said
 */
@Serdeable
public record IntakeAsked(
        @Nullable @Schema(maxLength = 40) String tag,
        @Nullable @Schema(maxLength = 30) String tagPrefix,
        @Nullable @Schema(maxLength = 40) String like,
        @Nullable Boolean likeLast,
        @Nullable Kind chemistry,
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
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,39}");
    private static final String NAME_TAKES =
            "1 to 40 letters, digits, spaces, points, dashes and underscores, a letter or digit first";
    private static final Pattern PREFIX = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,29}");
    private static final String PREFIX_TAKES =
            "1 to 30 letters, digits, spaces, points, dashes and underscores, a letter or digit first";
    private static final String USUAL_PREFIX = "cell";
    private static final String OPERATOR = "operator";

    /** What a cell is made of, as a card says it. */
    @Serdeable
    public enum Kind {
        nmc,
        nca,
        lco,
        lmo,
        lfp,
        unknown
    }

    /** Reads the body. */
    public static TakeIn read(@Nullable String text) {
        Body body = Body.of(text, CardFields.names("tag", "tagPrefix", "like", "likeLast", "by"));
        boolean likeLast = body.truthIfGiven("likeLast").orElse(false);
        if (body.isGiven("tag") && body.isGiven("tagPrefix")) {
            throw Body.bad("tag and tagPrefix cannot both be given: a cell has a name or gets a number.");
        }
        if (likeLast && body.isGiven("like")) {
            throw Body.bad("like and likeLast cannot both be given.");
        }
        return new TakeIn(
                name(body),
                body.isGiven("like") ? Optional.of(body.text("like", NAME_TAKES, NAME)) : Optional.empty(),
                likeLast,
                CardFields.read(body),
                by(body));
    }

    private static Name name(Body body) {
        if (body.isGiven("tag")) {
            return new Name.Given(body.text("tag", NAME_TAKES, NAME).strip());
        }
        return new Name.Numbered(
                body.isGiven("tagPrefix")
                        ? body.text("tagPrefix", PREFIX_TAKES, PREFIX).strip()
                        : USUAL_PREFIX);
    }

    static String by(Body body) {
        return body.isGiven("by") ? body.line("by", IntakeRequest.LONGEST_NAME) : OPERATOR;
    }
}
