package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmReceipt;
import org.ebbwatch.alarm.AlarmReply.Done;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;

/**
 * What came of a request about an alarm; the same when it is repeated with the same key.
 *
 * @param alarmId which
 * @param sequence the alarm's sequence afterwards, also in the header ETag
 * @param kind what it is about
 * @param step what was asked for
 * @param state where it was afterwards; NORMAL without a cover: it is over
 * @param cover what covered it afterwards
 * @param by who is written down as having asked
 * @param onDisk whether it would outlive a power cut by now; false while the records cannot be written
 */
@Serdeable
public record AlarmReceiptAnswer(
        UUID alarmId,
        long sequence,
        AlarmKind kind,
        AlarmStep step,
        AlarmState state,
        Cover cover,
        String by,
        boolean onDisk) {

    /** The answer to a request that was done. */
    public static AlarmReceiptAnswer of(Done done) {
        AlarmReceipt receipt = done.receipt();
        return new AlarmReceiptAnswer(
                receipt.alarm(),
                receipt.sequence(),
                receipt.kind(),
                receipt.step(),
                receipt.state(),
                receipt.cover(),
                receipt.by(),
                done.onDisk());
    }
}
