package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.PassageCard;

/**
 * A page of passages that are over, the one opened last first.
 *
 * @param passages at most as many as were asked for
 * @param next what to ask for as before to get the next page; null where there is none
 */
@Serdeable
public record ClosedPassages(List<Closed> passages, @Nullable UUID next) {

    /** A page of so many, made from at least one more where there are more. */
    static ClosedPassages of(List<ClosedPassage> found, int most) {
        List<Closed> page = found.stream().limit(most).map(Closed::of).toList();
        return new ClosedPassages(
                page, found.size() > most ? page.get(page.size() - 1).id() : null);
    }

    /**
     * A passage that is over.
     *
     * @param id its identifier, by which its trace can be asked for
     * @param tag the cell
     * @param board the board it was checked in on
     * @param channel the channel it was checked in on, from 0
     * @param simulated whether it was on a simulator
     * @param openedAt when it was opened, RFC 3339 in UTC
     * @param openedEventMillis event time of its opening
     * @param closedEventMillis event time of its end
     * @param phase how it ended
     * @param reason why
     */
    @Serdeable
    public record Closed(
            UUID id,
            String tag,
            String board,
            int channel,
            boolean simulated,
            @Nullable String openedAt,
            long openedEventMillis,
            long closedEventMillis,
            Phase phase,
            String reason) {
        static Closed of(ClosedPassage passage) {
            PassageCard card = passage.card();
            return new Closed(
                    card.id(),
                    card.cell().tag(),
                    card.board(),
                    card.channel(),
                    card.simulatedSpeed() > 0,
                    Figures.wallTime(card.wallMillis()),
                    card.openedMillis(),
                    passage.closedMillis(),
                    passage.phase(),
                    passage.reason());
        }
    }
}
