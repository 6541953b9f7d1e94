package org.ebbwatch.intake;

import java.util.Optional;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.ProtectionBoard;

/**
 * What a cell's card says, as its evidence tells it. The names of the parts are keys of {@code record.json} and stay.
 *
 * @param condition in words
 * @param protectionBoard whether one was in front of it
 * @param measuredVolts at rest, when it came
 * @param massGrams when it was emptied, or as it came where nobody weighed it since
 * @param thicknessMillimetres likewise
 * @param photoSha256 of its photo as it is kept
 * @param by who wrote last
 * @param revision of the card
 */
record Noted(
        Optional<String> condition,
        Optional<ProtectionBoard> protectionBoard,
        Optional<Double> measuredVolts,
        Optional<Double> massGrams,
        Optional<Double> thicknessMillimetres,
        Optional<String> origin,
        Optional<String> note,
        Optional<String> photoSha256,
        String by,
        int revision) {

    static Noted of(IntakeRecord record) {
        IntakeFields card = record.card();
        return new Noted(
                card.condition().map(Condition::words),
                card.protectionBoard(),
                card.measuredVolts(),
                card.massAfterGrams().or(card::massBeforeGrams),
                card.thicknessAfterMillimetres().or(card::thicknessBeforeMillimetres),
                card.origin(),
                card.note(),
                card.photo(),
                record.last().by(),
                record.last().number());
    }
}
