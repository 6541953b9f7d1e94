package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;

/**
 * One passage in short.
 *
 * @param id its identifier
 * @param tag the cell
 * @param board the board it is on
 * @param channel the channel it is on, from 0
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
}
