package org.ebbwatch.intake.rule;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What was written into a cell's card at one time; every field may be left out.
 *
 * @param cellsInSeries 1 to 100
 * @param ratedAmpereHours of one cell, 0.01 to 1000
 * @param origin where it came from: a device, a person, a box
 * @param measuredVolts at rest, across the whole, by a meter
 * @param voltsExplained why a voltage that does not fit is right all the same
 * @param massBeforeGrams as it came, 0.1 to 100000
 * @param massAfterGrams when it was emptied
 * @param thicknessBeforeMillimetres as it came, at its thickest, 0.1 to 1000
 * @param thicknessAfterMillimetres when it was emptied
 * @param photo SHA-256 of its photo as it is kept, in hexadecimal
 */
public record IntakeFields(
        Optional<CellChemistry> chemistry,
        Optional<Integer> cellsInSeries,
        Optional<Double> ratedAmpereHours,
        Optional<String> origin,
        Optional<Condition> condition,
        Optional<ProtectionBoard> protectionBoard,
        Optional<Double> measuredVolts,
        Optional<String> voltsExplained,
        Optional<Double> massBeforeGrams,
        Optional<Double> massAfterGrams,
        Optional<Double> thicknessBeforeMillimetres,
        Optional<Double> thicknessAfterMillimetres,
        Optional<String> note,
        Optional<String> photo) {
    public IntakeFields {
        requireNonNull(chemistry);
        requireNonNull(condition);
        requireNonNull(protectionBoard);
        cellsInSeries.ifPresent(number -> require("cells in series", number, 1, 100));
        ratedAmpereHours.ifPresent(number -> require("rated ampere hours", number, 0.01, 1_000));
        measuredVolts.ifPresent(number -> require("measured volts", number, -500, 500));
        Stream.of(massBeforeGrams, massAfterGrams)
                .flatMap(Optional::stream)
                .forEach(number -> require("grams", number, 0.1, 100_000));
        Stream.of(thicknessBeforeMillimetres, thicknessAfterMillimetres)
                .flatMap(Optional::stream)
                .forEach(number -> require("millimetres", number, 0.1, 1_000));
    }

    /** Nothing at all. */
    public static final IntakeFields NOTHING = new IntakeFields(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    /**
     * What the next cell of the same box has in common with this one: what stands on its label, and where it came from. What has to be
     * looked at, measured or weighed is never taken over.
     */
    public IntakeFields common() {
        return new IntakeFields(
                chemistry,
                cellsInSeries,
                ratedAmpereHours,
                origin,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** These fields, and those of {@code earlier} where nothing is said here. */
    public IntakeFields over(IntakeFields earlier) {
        return new IntakeFields(
                chemistry.or(earlier::chemistry),
                cellsInSeries.or(earlier::cellsInSeries),
                ratedAmpereHours.or(earlier::ratedAmpereHours),
                origin.or(earlier::origin),
                condition.or(earlier::condition),
                protectionBoard.or(earlier::protectionBoard),
                measuredVolts.or(earlier::measuredVolts),
                voltsExplained.or(earlier::voltsExplained),
                massBeforeGrams.or(earlier::massBeforeGrams),
                massAfterGrams.or(earlier::massAfterGrams),
                thicknessBeforeMillimetres.or(earlier::thicknessBeforeMillimetres),
                thicknessAfterMillimetres.or(earlier::thicknessAfterMillimetres),
                note.or(earlier::note),
                photo.or(earlier::photo));
    }

    /** The same without the reason for its volts. */
    public IntakeFields unexplained() {
        return new IntakeFields(
                chemistry,
                cellsInSeries,
                ratedAmpereHours,
                origin,
                condition,
                protectionBoard,
                measuredVolts,
                Optional.empty(),
                massBeforeGrams,
                massAfterGrams,
                thicknessBeforeMillimetres,
                thicknessAfterMillimetres,
                note,
                photo);
    }

    /** Whether anything is said here on which it depends whether the volts fit. */
    public boolean bearsOnVolts() {
        return chemistry.isPresent() || cellsInSeries.isPresent() || measuredVolts.isPresent();
    }

    /** The same with that photo. */
    public IntakeFields withPhoto(String sha256) {
        return new IntakeFields(
                chemistry,
                cellsInSeries,
                ratedAmpereHours,
                origin,
                condition,
                protectionBoard,
                measuredVolts,
                voltsExplained,
                massBeforeGrams,
                massAfterGrams,
                thicknessBeforeMillimetres,
                thicknessAfterMillimetres,
                note,
                Optional.of(sha256));
    }

    /** Whether something that was written in {@code earlier} is written otherwise here; filling in a blank is none. */
    public boolean overwrites(IntakeFields earlier) {
        List<Optional<?>> before = earlier.all();
        List<Optional<?>> now = all();
        for (int i = 0; i < now.size(); i++) {
            if (before.get(i).isPresent() && !Objects.equals(before.get(i), now.get(i))) {
                return true;
            }
        }
        return false;
    }

    private List<Optional<?>> all() {
        return List.of(
                chemistry,
                cellsInSeries,
                ratedAmpereHours,
                origin,
                condition,
                protectionBoard,
                measuredVolts,
                voltsExplained,
                massBeforeGrams,
                massAfterGrams,
                thicknessBeforeMillimetres,
                thicknessAfterMillimetres,
                note,
                photo);
    }

    private static void require(String what, double number, double least, double most) {
        if (!(number >= least && number <= most)) {
            throw new IllegalArgumentException(what + " are " + least + " to " + most + ", not " + number);
        }
    }
}
