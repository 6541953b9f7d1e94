package org.ebbwatch.alarm;

import java.util.List;
import org.ebbwatch.alarm.book.Raised;

/** What alarms were raised, living or over. Safe for use by several threads. */
public interface AlarmHistory {

    /**
     * Every time an alarm was raised since then, oldest first.
     *
     * @throws org.ebbwatch.store.StorageException if it cannot be read
     */
    List<Raised> raisedSince(long wallMillis);
}
