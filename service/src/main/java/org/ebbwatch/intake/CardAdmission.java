package org.ebbwatch.intake;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.passage.Admission;
import org.ebbwatch.passage.DeskRequest.CheckIn;

/**
 * Holds a check-in against the cell's card, and that of the pack its string is called after. A cell without a card passes: whoever
 * writes none is asked nothing.
 */
public final class CardAdmission implements Admission {
    private static final double SAME_CAPACITY = 0.01;
    private static final double LOAD_LEEWAY = 1.05;

    private final IntakeRecords records;

    public CardAdmission(IntakeRecords records) {
        this.records = records;
    }

    @Override
    public Optional<String> objection(CheckIn request) {
        CellCard cell = request.cell();
        Optional<String> ofCell = records.tagged(cell.tag()).flatMap(record -> objection(record, request));
        return ofCell.isPresent()
                ? ofCell
                : cell.string()
                        .map(CellString::name)
                        .filter(name -> !name.equals(cell.tag()))
                        .flatMap(records::tagged)
                        .flatMap(record -> objection(record, request));
    }

    private static Optional<String> objection(IntakeRecord record, CheckIn request) {
        IntakeFields card = record.card();
        String saidByCard = "The card of " + record.tag() + " says ";
        String barred = record.triage().objections().stream()
                .map(objection -> objection.why() + ' ' + objection.toDo())
                .collect(Collectors.joining(" "));
        if (!barred.isEmpty()) {
            return Optional.of("The card of " + record.tag() + " keeps it off the rack. " + barred);
        }
        return Stream.of(
                        chemistry(card, request, saidByCard),
                        capacity(card, request, saidByCard),
                        inSeries(card, request, saidByCard),
                        procedure(card, request, saidByCard),
                        load(card, request, saidByCard))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static Optional<String> chemistry(IntakeFields card, CheckIn request, String said) {
        return card.chemistry()
                .filter(chemistry -> chemistry.judged() != request.cell().chemistry())
                .map(chemistry -> said + "its chemistry is " + chemistry.key()
                        + "; it would be judged as something else. Correct the one that is wrong.");
    }

    private static Optional<String> capacity(IntakeFields card, CheckIn request, String said) {
        double given = request.cell().ratedAmpereHours();
        return card.ratedAmpereHours()
                .filter(rated -> Math.abs(given - rated) > SAME_CAPACITY * rated)
                .map(rated ->
                        said + "its rating is " + rated + " Ah, not " + given + ". Correct the one that is wrong.");
    }

    private static Optional<String> inSeries(IntakeFields card, CheckIn request, String said) {
        int onCard = card.cellsInSeries().orElse(1);
        int given = request.cell().string().map(CellString::cells).orElse(1);
        return onCard > 1 && onCard != given
                ? Optional.of(
                        said + "it is " + onCard + " cells in series. Give each a channel of its own as a string of "
                                + onCard + ", or take the pack apart and write a card for each.")
                : Optional.empty();
    }

    private static Optional<String> procedure(IntakeFields card, CheckIn request, String said) {
        return card.condition()
                .filter(Condition::isDamaged)
                .filter(condition -> !Objects.equals(request.procedure().name(), BuiltIn.DAMAGED.key()))
                .map(condition -> said + "it is " + condition.words() + ". Judge it by the procedure "
                        + BuiltIn.DAMAGED.key() + '.');
    }

    /** The first moment on that load, by the volts that were measured. */
    private static Optional<String> load(IntakeFields card, CheckIn request, String said) {
        double ohms = request.cell().loadOhms();
        Optional<Double> rate = card.condition().flatMap(Condition::fastestRate);
        if (rate.isEmpty() || card.measuredVolts().isEmpty()) {
            return Optional.empty();
        }
        int strings = request.cell().string().map(CellString::cells).orElse(1)
                / card.cellsInSeries().orElse(1);
        double least = strings
                * card.measuredVolts().get()
                / (rate.get() * request.cell().ratedAmpereHours());
        return ohms * LOAD_LEEWAY < least
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "%sit is %s and shows %.2f V: it is emptied at C/%.0f or slower, which takes %.3g ohm or more, not"
                                + " %.3g. `ebbwatch size` names a load.",
                        said,
                        card.condition().orElseThrow().words(),
                        card.measuredVolts().get(),
                        1 / rate.get(),
                        least,
                        ohms))
                : Optional.empty();
    }
}
