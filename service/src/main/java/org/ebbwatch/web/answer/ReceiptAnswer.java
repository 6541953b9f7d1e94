package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.Receipt;

/**
 * What came of a request; the same when it is repeated with the same key.
 *
 * @param passageId whose
 * @param sequence the passage's sequence afterwards, also in the header ETag
 * @param board the board the passage is on
 * @param channel the channel it is on, from 0
 * @param phase the phase it is in
 * @param reason why it is in that phase
 * @param onDisk whether it would outlive a power cut by now; false while the records cannot be written
 */
@Serdeable
public record ReceiptAnswer(
        UUID passageId, long sequence, String board, int channel, Phase phase, String reason, boolean onDisk) {

    /** The answer to a request that was done. */
    public static ReceiptAnswer of(Done done) {
        Receipt receipt = done.receipt();
        return new ReceiptAnswer(
                receipt.passage(),
                receipt.sequence(),
                receipt.board(),
                receipt.channel(),
                receipt.phase(),
                receipt.reason(),
                done.onDisk());
    }
}
