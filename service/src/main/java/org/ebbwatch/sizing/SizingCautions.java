package org.ebbwatch.sizing;

import static org.ebbwatch.sizing.Ranges.plain;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Danger;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.sizing.SizingAnswer.Piece;
import org.ebbwatch.sizing.SizingAnswer.Sized;

/** What a person must know besides the numbers of a load. */
final class SizingCautions {
    private static final double NEAR_THE_LIMIT = LoadSizing.EASE;
    private static final double COOLER_CELSIUS = 60;

    private SizingCautions() {}

    static List<String> of(Sized sized) {
        LoadWish wish = sized.wish();
        List<String> cautions = new ArrayList<>();
        Piece warmest = sized.warmest();
        if (warmest.touch() != Touch.HARMLESS) {
            cautions.add(Danger.HOT_RESISTOR.words() + " At " + plain(Math.rint(warmest.celsius()))
                    + " degrees its surface " + warmest.touch().words() + "." + cooler(wish, warmest));
        }
        Piece hardest = sized.hardest();
        if (hardest.share() > NEAR_THE_LIMIT) {
            cautions.add("A resistor carries " + plain(100 * hardest.share())
                    + " % of what it may. Common practice is at most half: take a higher rating where you can.");
        }
        if (wish.cellsInSeries() > 1) {
            cautions.add(Danger.REVERSED_IN_A_STRING.words());
        }
        if (wish.protectionBoard() == ProtectionBoard.UNKNOWN) {
            cautions.add(
                    "Look for a protection board before the load goes on: through one the cell is never emptied, and its"
                            + " 0 V mean nothing.");
        }
        if (wish.condition().isDamaged()) {
            cautions.add(
                    "Treated as damaged: at most C/20, procedure `damaged`. " + Danger.PUFFED_POUCH_PIERCED.words());
        }
        if (wish.chemistry() == CellChemistry.UNKNOWN) {
            cautions.add(
                    "Nobody knows its chemistry; it is taken for layered oxide. Iron phosphate takes about as long, and"
                            + " holds less.");
        }
        if (wish.cells() > sized.atOnce()) {
            cautions.add("The room warms by more than "
                    + plain(wish.surroundings().room().riseKelvin()) + " K if all " + wish.cells()
                    + " are put on at once: begin with " + sized.atOnce() + '.');
        }
        cautions.add(Danger.ONLY_LOOKED_EMPTY.words() + " Rest and tie-off are the proof, not 0 V on a load.");
        cautions.add(Danger.LEFT_ON_WOOD.words() + " Watch the first hour yourself. Your local code comes first.");
        return cautions;
    }

    private static String cooler(LoadWish wish, Piece warmest) {
        double air = wish.surroundings().airCelsius();
        if (warmest.touch() != Touch.BURNS || air >= COOLER_CELSIUS) {
            return "";
        }
        double rating = warmest.resistor()
                .build()
                .ratingFor(warmest.watts(), wish.surroundings().mounting(), air, COOLER_CELSIUS);
        return " A rating of " + plain(Math.ceil(rating)) + " W or more keeps it below " + plain(COOLER_CELSIUS)
                + " degrees.";
    }
}
