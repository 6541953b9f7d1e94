package org.ebbwatch.alarm;

import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.ebbwatch.alarm.book.AlarmStep;

/** How a person's request about an alarm ended. Whatever is no {@link Done} has changed nothing. */
public sealed interface AlarmReply {

    /**
     * Done.
     *
     * @param receipt what came of it; the same whenever it is asked again with the same key
     * @param onDisk whether it would outlive a power cut by now; false while storage is away
     */
    record Done(AlarmReceipt receipt, boolean onDisk) implements AlarmReply {}

    /** There is no such alarm, or it is over. */
    record Unknown(UUID alarm) implements AlarmReply {}

    /** The alarm has made steps since the person looked. */
    record Stale(AlarmView now, AlarmStep asked, long seen) implements AlarmReply {}

    /**
     * The alarm does not allow it.
     *
     * @param now the alarm as it is, with what it allows
     * @param asked what was asked for
     * @param why which sort of refusal
     * @param words the same for a person
     */
    record Refused(AlarmView now, AlarmStep asked, Why why, String words) implements AlarmReply {}

    /** The key was used before, for another request. */
    record KeyUsed(String key) implements AlarmReply {}
}
