package org.ebbwatch.alarm;

import static java.util.Objects.requireNonNull;

/**
 * Something the outlets are told that is no alarm and never rings.
 *
 * @param kind by which a receiver can tell it
 * @param what in one line
 * @param text in full, as plain text
 */
public record RackNotice(String kind, String what, String text) {
    public RackNotice {
        requireNonNull(kind);
        requireNonNull(what);
        requireNonNull(text);
    }
}
