package org.ebbwatch.rack;

import java.time.LocalTime;
import java.util.Optional;

/**
 * How alarms reach a person.
 *
 * @param nightFrom from this local time on nobody is woken for what can wait
 * @param nightTo until this
 * @param webhook where they are posted; empty: nowhere
 */
public record AlarmEntry(LocalTime nightFrom, LocalTime nightTo, Optional<WebhookEntry> webhook) {
    static final AlarmEntry USUAL = new AlarmEntry(LocalTime.of(22, 0), LocalTime.of(7, 0), Optional.empty());
}
