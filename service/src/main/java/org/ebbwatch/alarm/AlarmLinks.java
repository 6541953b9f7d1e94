package org.ebbwatch.alarm;

import java.util.Optional;
import org.ebbwatch.alarm.book.Telling;

/** Makes the links by which a message can be acknowledged. */
@FunctionalInterface
public interface AlarmLinks {
    /** No message has one. */
    AlarmLinks NONE = telling -> Optional.empty();

    /** The link of a message; empty where there is nothing to acknowledge, or nowhere to do it. */
    Optional<String> of(Telling telling);
}
