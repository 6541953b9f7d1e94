package org.ebbwatch.intake.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether a cell may go onto the rack as its card stands, and what whoever handles it has to know.
 *
 * @param objections why it may not; empty: it may
 * @param cautions what to mind, on the rack or off it
 */
public record Triage(List<Objection> objections, List<String> cautions) {
    public Triage {
        objections = List.copyOf(objections);
        cautions = List.copyOf(cautions);
    }

    /** In one word. */
    public enum Verdict {
        /** It may go onto the rack. */
        ADMITTED,
        /** Not as it stands; something has to be done or decided first. */
        NOT_YET,
        /** It does not go onto the rack at all. */
        TURNED_AWAY
    }

    /** What a card that has all it needs amounts to. */
    public static Triage of(IntakeFields card) {
        Condition condition = card.condition().orElse(Condition.UNKNOWN);
        ProtectionBoard board = card.protectionBoard().orElse(ProtectionBoard.UNKNOWN);
        CellChemistry chemistry = card.chemistry().orElse(CellChemistry.UNKNOWN);
        List<Objection> objections = new ArrayList<>();
        if (!condition.isForARack()) {
            objections.add(new Objection.NotOnARack(condition));
        }
        if (board == ProtectionBoard.PRESENT) {
            objections.add(new Objection.BoardPresent());
        }
        if (card.measuredVolts().isEmpty() && condition.isForARack()) {
            objections.add(new Objection.NotMeasured());
        }
        if (chemistry == CellChemistry.UNKNOWN && condition.isForARack()) {
            objections.add(new Objection.ChemistryUnknown());
        }
        return new Triage(objections, cautions(card, condition, board, chemistry));
    }

    private static List<String> cautions(
            IntakeFields card, Condition condition, ProtectionBoard board, CellChemistry chemistry) {
        List<String> cautions = new ArrayList<>();
        int inSeries = card.cellsInSeries().orElse(1);
        Optional<Double> volts = card.measuredVolts();
        if (condition.isForARack() && condition.isDamaged()) {
            cautions.add("Treated as damaged: " + condition.danger() + ' ' + condition.practice());
        }
        if (board == ProtectionBoard.UNKNOWN) {
            cautions.add(
                    "Look for a protection board. Behind one the cell will never be empty: at some 2.4 V the terminals fall to"
                            + " 0 V while the cell keeps what it holds. The watch would find CUT_OFF and hold the cell.");
        }
        if (volts.isPresent() && Voltage.of(chemistry, inSeries, volts.get()) == Voltage.SHOWS_NOTHING) {
            cautions.add(
                    "Dead on arrival: below 1 V its terminals say nothing about what it holds. A disconnect inside, a"
                            + " protection board or a broken lead shows the same. The watch holds such a cell as not proven; it is"
                            + " never released as emptied. Hand it over as a damaged cell that may hold charge.");
            cautions.add(Danger.CHARGED_AGAIN.words());
        }
        if (volts.isPresent() && Voltage.of(chemistry, inSeries, volts.get()) == Voltage.HIGH) {
            cautions.add(
                    "If it was overcharged it is unstable: keep it apart, outdoors, on a surface that does not burn.");
        }
        if (condition == Condition.SWOLLEN) {
            cautions.add(Danger.PUFFED_POUCH_PIERCED.words());
        }
        if (condition.isForGood()) {
            cautions.add(Danger.HYDROGEN_FLUORIDE.words());
        }
        if (inSeries > 1) {
            cautions.add(Danger.REVERSED_IN_A_STRING.words());
        }
        cautions.add("Wear eye protection. " + Danger.BOTH_LEADS_CUT.words());
        cautions.add(Danger.LEFT_ON_WOOD.words());
        return cautions;
    }

    /** In one word. */
    public Verdict verdict() {
        if (objections.isEmpty()) {
            return Verdict.ADMITTED;
        }
        return objections.stream().anyMatch(Objection::isForGood) ? Verdict.TURNED_AWAY : Verdict.NOT_YET;
    }
}
