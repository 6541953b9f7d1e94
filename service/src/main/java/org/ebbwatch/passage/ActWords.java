package org.ebbwatch.passage;

import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Phase;

/** Why a passage does not allow an act now, in one sentence. */
final class ActWords {
    private ActWords() {}

    static String whyNot(Act act, Judge judge) {
        Phase phase = judge.phase();
        String usual = "In " + phase + " there is nothing of that kind to do.";
        return switch (act) {
            case PUT_ON -> phase == Phase.HELD ? "Held: decide first, by DRAIN_AGAIN or WITHDRAW." : usual;
            case TAKE_OFF -> phase == Phase.HELD ? "No load is on." : usual;
            case TIE_OFF ->
                phase == Phase.REST ? "It has not rested long enough, or is not proven to be empty." : usual;
            case PART -> phase == Phase.TIE_OFF ? "The bonded cell has not been watched long enough." : usual;
            case RELEASE -> phase == Phase.TIE_OFF ? "The last open measurement is not complete." : usual;
            case DRAIN_AGAIN -> phase == Phase.HELD ? whyNotAgain(judge) : usual;
            case SPARK, WITHDRAW -> usual;
        };
    }

    private static String whyNotAgain(Judge judge) {
        boolean reversed = judge.findings().stream().anyMatch(finding -> finding.kind() == FindingKind.REVERSED);
        boolean hot = judge.findings().stream().anyMatch(finding -> finding.kind() == FindingKind.HOT);
        if (judge.owesLoad()) {
            return "It left its string: say first which load of its own it finishes on.";
        }
        if (reversed) {
            return "A reversed cell is never put on a load or charged again.";
        }
        return hot
                ? "Leave it alone until it has stayed cool for its calm time."
                : "It was never seen above 1 V with the right polarity.";
    }
}
