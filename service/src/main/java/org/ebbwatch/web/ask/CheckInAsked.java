package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.ebbwatch.passage.DeskRequest.CheckIn;

/**
 * A cell that is on a channel and is to be watched. Torn, leaking, hissing or warm cells do not go on a rack; a protection board is
 * taken off first.
 *
 * @param board the rack's name for the board
 * @param channel as the board counts, from 0
 * @param tag the name that is written on the cell: 1 to 40 letters, digits, spaces, points, dashes and underscores
 * @param chemistry of the cell
 * @param ratedAmpereHours the maker's rating when new
 * @param loadOhms the resistor it is emptied through
 * @param loadTolerancePercent how far the resistor and its leads may be off; 5 where nothing is said
 * @param switched true where the board's switch closes the load, false where hands do
 * @param inString whether it is one of several cells in series on neighbouring channels; true where a string is named
 * @param string the name of that string; loadOhms and switched are then those of the one load across all its cells
 * @param stringFirstChannel the first channel of the string
 * @param stringCells how many cells the string has, on as many neighbouring channels
 * @param procedure what it is judged by; careful where nothing is said; lfp takes iron phosphate only, large 2 Ah and more
 */
@Serdeable
public record CheckInAsked(
        String board,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0", maximum = "63") int channel,
        @Schema(requiredMode = RequiredMode.REQUIRED, maxLength = 40) String tag,
        Kind chemistry,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0.01", maximum = "1000") double ratedAmpereHours,
        @Schema(requiredMode = RequiredMode.REQUIRED, minimum = "0.01", maximum = "100000") double loadOhms,
        @Nullable @Schema(minimum = "0", maximum = "20") Double loadTolerancePercent,
        @Schema(requiredMode = RequiredMode.REQUIRED) boolean switched,
        @Nullable Boolean inString,
        @Nullable @Schema(maxLength = 40) String string,
        @Nullable @Schema(minimum = "0", maximum = "62") Integer stringFirstChannel,
        @Nullable @Schema(minimum = "2", maximum = "64") Integer stringCells,
        @Nullable Rule procedure) {
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,39}");
    private static final String NAME_TAKES =
            "1 to 40 letters, digits, spaces, points, dashes and underscores, a letter or digit first";
    private static final int HIGHEST_CHANNEL = 63;

    /** What a cell is made of, as a rack file says it. */
    @Serdeable
    public enum Kind {
        nmc(Chemistry.LAYERED_OXIDE),
        nca(Chemistry.LAYERED_OXIDE),
        lco(Chemistry.LAYERED_OXIDE),
        lmo(Chemistry.LAYERED_OXIDE),
        lfp(Chemistry.LFP);

        private final Chemistry judged;

        Kind(Chemistry judged) {
            this.judged = judged;
        }
    }

    /** The procedures there are. */
    @Serdeable
    public enum Rule {
        careful(BuiltIn.CAREFUL),
        strict(BuiltIn.STRICT),
        lfp(BuiltIn.LFP),
        large(BuiltIn.LARGE),
        damaged(BuiltIn.DAMAGED);

        private final BuiltIn named;

        Rule(BuiltIn named) {
            this.named = named;
        }
    }

    private static Optional<CellString> string(Body body) {
        boolean told = body.isGiven("string") || body.isGiven("stringFirstChannel") || body.isGiven("stringCells");
        if (!told) {
            return Optional.empty();
        }
        String name = body.text("string", NAME_TAKES, NAME);
        int first = body.whole("stringFirstChannel", 0, HIGHEST_CHANNEL - 1);
        return Optional.of(new CellString(name, first, body.whole("stringCells", 2, HIGHEST_CHANNEL + 1 - first)));
    }

    private static Optional<LoadTolerance> tolerance(Body body) {
        return body.isGiven("loadTolerancePercent")
                ? Optional.of(
                        new LoadTolerance(body.number("loadTolerancePercent", 0, 100 * LoadTolerance.MOST_SHARE) / 100))
                : Optional.empty();
    }

    /** Reads the body. */
    public static CheckIn read(@Nullable String text) {
        Body body = Body.of(
                text,
                "board",
                "channel",
                "tag",
                "chemistry",
                "ratedAmpereHours",
                "loadOhms",
                "loadTolerancePercent",
                "switched",
                "inString",
                "string",
                "stringFirstChannel",
                "stringCells",
                "procedure");
        Optional<CellString> string = string(body);
        var cell = new CellCard(
                body.text("tag", NAME_TAKES, NAME),
                body.choice("chemistry", Kind.values(), Kind::name).judged,
                body.number("ratedAmpereHours", 0.01, 1_000),
                body.number("loadOhms", 0.01, 100_000),
                body.truth("switched"),
                body.truthIfGiven("inString").orElse(false) || string.isPresent(),
                string,
                tolerance(body));
        Rule rule = body.isGiven("procedure") ? body.choice("procedure", Rule.values(), Rule::name) : Rule.careful;
        rule.named.refusal(cell.chemistry(), cell.ratedAmpereHours()).ifPresent(why -> {
            throw Body.bad("procedure does not fit this cell: " + why + '.');
        });
        return new CheckIn(
                body.text("board", NAME_TAKES, NAME),
                body.whole("channel", 0, HIGHEST_CHANNEL),
                cell,
                rule.named.procedure());
    }
}
