package org.ebbwatch.plan;

import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView.PassageView;

/**
 * What one passage needs next, and after how much event time at the earliest.
 *
 * @param afterMillis 0: now
 * @param canWait whether nothing gets worse until the morning
 */
record NextTask(Task task, long afterMillis, boolean canWait, String why) {
    private static final long PROVEN_BY_MILLIS = 600_000;

    /** Empty where the passage is over. */
    static Optional<NextTask> of(PassageView passage, long eventMillis) {
        if (passage.phase().isOver()) {
            return Optional.empty();
        }
        Optional<NextTask> wrong = wrong(passage);
        return wrong.isPresent() ? wrong : Optional.of(usual(passage, eventMillis));
    }

    private static Optional<NextTask> wrong(PassageView passage) {
        Task task = passage.phase() == Phase.HELD ? Task.DECIDE : Task.LOOK;
        return passage.findings().stream()
                .filter(finding -> finding.kind().urgency() != Urgency.ADVISORY)
                .max((one, other) -> one.kind().urgency().compareTo(other.kind().urgency()))
                .map(Finding::line)
                .map(line -> new NextTask(task, 0, false, line));
    }

    private static NextTask usual(PassageView passage, long eventMillis) {
        if (passage.seems().isPresent()) {
            return now(Task.CONFIRM, passage.seems().get().words());
        }
        return switch (passage.phase()) {
            case CHECK_IN -> checkIn(passage, eventMillis);
            case DRAIN -> drain(passage);
            case REST -> rest(passage);
            case TIE_OFF -> passage.bonded() ? bonded(passage) : parted(passage);
            case HELD -> now(Task.DECIDE, passage.reason());
            case RELEASED, WITHDRAWN -> throw new IllegalStateException("nothing is next in " + passage.phase());
        };
    }

    private static NextTask checkIn(PassageView passage, long eventMillis) {
        if (asks(passage, Wish.ASK_PUT_ON)) {
            return now(Task.PUT_ON, "It is proven to be above 1 V with the right polarity.");
        }
        return eventMillis - passage.openedMillis() > PROVEN_BY_MILLIS
                ? now(Task.DECIDE, "It was not seen above 1 V with the right polarity; it may be full all the same.")
                : now(Task.PUT_ON, "As soon as it is proven to be above 1 V with the right polarity.");
    }

    private static NextTask drain(PassageView passage) {
        Procedure procedure = passage.card().procedure();
        String limit = volts(procedure.drain().limitVolts());
        if (asks(passage, Wish.ASK_PUT_ON)) {
            return now(Task.PUT_ON, "It is to be drained again.");
        }
        if (asks(passage, Wish.ASK_TAKE_OFF)) {
            return now(Task.TAKE_OFF, "It has stayed below " + limit + " for its hold; it may stay on its load.");
        }
        return passage.card().cell().switched()
                ? new NextTask(
                        Task.TIE_OFF,
                        passage.remainingMillis() + procedure.rest().leastMillis(),
                        true,
                        "After its hold below " + limit + " and its rest, if it does not come back.")
                : new NextTask(
                        Task.TAKE_OFF,
                        passage.remainingMillis(),
                        true,
                        "Once it has stayed below " + limit + " for its hold; it may stay on its load.");
    }

    private static NextTask rest(PassageView passage) {
        if (asks(passage, Wish.ASK_METER)) {
            return now(Task.MEASURE, "Nothing else can prove that the board is attached to the cell.");
        }
        String limit = volts(passage.card().procedure().rest().limitVolts());
        return asks(passage, Wish.ASK_TIE_OFF)
                ? now(Task.TIE_OFF, "It has rested below " + limit + '.')
                : new NextTask(
                        Task.TIE_OFF, passage.remainingMillis(), true, "If it stays below " + limit + " for its rest.");
    }

    private static NextTask bonded(PassageView passage) {
        return new NextTask(
                Task.PART,
                asks(passage, Wish.ASK_PART) ? 0 : passage.remainingMillis(),
                true,
                "Bonded and watched for warmth; it may stay bonded.");
    }

    private static NextTask parted(PassageView passage) {
        if (asks(passage, Wish.ASK_METER)) {
            return now(Task.MEASURE, "Nothing else can prove that the board is attached to the cell.");
        }
        return asks(passage, Wish.ASK_RELEASE)
                ? now(Task.RELEASE, "Everything is proven.")
                : new NextTask(
                        Task.RELEASE, passage.remainingMillis(), true, "If it stays down for its last measurement.");
    }

    private static boolean asks(PassageView passage, Wish wish) {
        return passage.standing().contains(wish);
    }

    private static NextTask now(Task task, String why) {
        return new NextTask(task, 0, true, why);
    }

    private static String volts(double volts) {
        return String.format(Locale.ROOT, "%.2f V", volts);
    }
}
