package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;

/**
 * One passage in short.
 *
 * @param id its identifier
 * @param tag the cell
 * @param board the board it is on
 * @param channel the channel it is on, from 0
 * @param sequence rises whenever something changes that a person goes by; its ETag when it is asked for in full
 * @param switched whether the board switches its load, and not hands
 * @param loadOn whether its load is known to be on
 * @param bonded whether its leads are bonded
 * @param seems what the terminals say of a load put on by hand, against what was said; null where they agree
 * @param phase where it is
 * @param reason why it is there
 * @param attention how much it needs a person
 * @param locked whether something keeps its load from closing by itself
 * @param round how many drains have begun
 * @param ampereHours taken out so far
 * @param wattHours taken out so far, at the terminals
 * @param remainingMillis event time its running watch has still to go; 0 where none runs or it is done
 * @param openedEventMillis event time of its opening
 * @param findings what stands, urgent first
 * @param waitsFor what it waits for a person to do
 */
@Serdeable
public record PassageShort(
        UUID id,
        String tag,
        String board,
        int channel,
        long sequence,
        boolean switched,
        boolean loadOn,
        boolean bonded,
        @Nullable Seems seems,
        Phase phase,
        String reason,
        Attention attention,
        boolean locked,
        int round,
        @Nullable Double ampereHours,
        @Nullable Double wattHours,
        long remainingMillis,
        long openedEventMillis,
        List<FindingAnswer> findings,
        List<WaitsFor> waitsFor) {

    static PassageShort of(PassageView passage) {
        return new PassageShort(
                passage.id(),
                passage.tag(),
                passage.board(),
                passage.channel(),
                passage.sequence(),
                passage.card().cell().switched(),
                passage.loadOn(),
                passage.bonded(),
                passage.seems().map(Seems::of).orElse(null),
                passage.phase(),
                passage.reason(),
                Attention.of(passage),
                passage.locked(),
                passage.round(),
                Figures.fine(passage.ampereHours()),
                Figures.fine(passage.wattHours()),
                passage.remainingMillis(),
                passage.openedMillis(),
                FindingAnswer.of(passage.findings()),
                WaitsFor.of(passage.standing()));
    }

    /**
     * Something a person should confirm or look into.
     *
     * @param what it seems to be
     * @param words what to do, in one sentence
     */
    @Serdeable
    public record Seems(LoadStep what, String words) {
        static Seems of(LoadStep step) {
            return new Seems(step, step.words());
        }
    }
}
