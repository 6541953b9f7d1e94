package org.ebbwatch.web.ask;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.ebbwatch.intake.IntakeRequest;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.ProtectionBoard;

/** The fields of a cell's card in a body. */
final class CardFields {
    private static final String[] NAMES = {
        "chemistry",
        "cellsInSeries",
        "ratedAmpereHours",
        "origin",
        "condition",
        "protectionBoard",
        "measuredVolts",
        "voltsExplained",
        "massBeforeGrams",
        "massAfterGrams",
        "thicknessBeforeMillimetres",
        "thicknessAfterMillimetres",
        "note"
    };
    private static final double MOST_VOLTS = 500;
    private static final double MOST_GRAMS = 100_000;
    private static final double MOST_MILLIMETRES = 1_000;

    private CardFields() {}

    /** The names of these fields and of further ones. */
    static String[] names(String... further) {
        return Stream.of(further, NAMES).flatMap(Stream::of).toArray(String[]::new);
    }

    static IntakeFields read(Body body) {
        return new IntakeFields(
                given(body, "chemistry", () -> body.choice("chemistry", CellChemistry.values(), CellChemistry::key)),
                given(body, "cellsInSeries", () -> body.whole("cellsInSeries", 1, 100)),
                given(body, "ratedAmpereHours", () -> body.number("ratedAmpereHours", 0.01, 1_000)),
                text(body, "origin"),
                given(body, "condition", () -> body.choice("condition", Condition.values(), Condition::name)),
                given(
                        body,
                        "protectionBoard",
                        () -> body.choice("protectionBoard", ProtectionBoard.values(), ProtectionBoard::name)),
                given(body, "measuredVolts", () -> body.number("measuredVolts", -MOST_VOLTS, MOST_VOLTS)),
                text(body, "voltsExplained"),
                size(body, "massBeforeGrams", MOST_GRAMS),
                size(body, "massAfterGrams", MOST_GRAMS),
                size(body, "thicknessBeforeMillimetres", MOST_MILLIMETRES),
                size(body, "thicknessAfterMillimetres", MOST_MILLIMETRES),
                text(body, "note"),
                Optional.empty());
    }

    private static Optional<String> text(Body body, String field) {
        return given(body, field, () -> body.line(field, IntakeRequest.LONGEST_TEXT));
    }

    private static Optional<Double> size(Body body, String field, double most) {
        return given(body, field, () -> body.number(field, 0.1, most));
    }

    private static <T> Optional<T> given(Body body, String field, Supplier<T> read) {
        return body.isGiven(field) ? Optional.of(read.get()) : Optional.empty();
    }
}
