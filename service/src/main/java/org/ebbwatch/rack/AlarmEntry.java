package org.ebbwatch.rack;

import java.net.URI;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * How alarms reach a person.
 *
 * @param nightFrom from this local time on nobody is woken for what can wait
 * @param nightTo until this
 * @param publicAddress under which people reach this service, without a path; empty: messages carry no link
 * @param outlets by which alarms leave; none: by no way
 */
public record AlarmEntry(
        LocalTime nightFrom, LocalTime nightTo, Optional<URI> publicAddress, List<OutletEntry> outlets) {
    static final AlarmEntry USUAL =
            new AlarmEntry(LocalTime.of(22, 0), LocalTime.of(7, 0), Optional.empty(), List.of());

    public AlarmEntry {
        outlets = List.copyOf(outlets);
    }
}
