package org.ebbwatch.alarm.outlet;

import static java.util.Objects.requireNonNull;

import java.util.Map;
import java.util.UUID;

/**
 * A message to the outside.
 *
 * @param id the same at each attempt, so that a receiver can tell a repetition
 * @param number its place among all messages of this service
 * @param rings whether it should wake a person
 * @param body the whole message as JSON
 * @param fields the same, field by field, as text; {@link MessageField} lists them
 */
public record OutletMessage(UUID id, long number, boolean rings, String body, Map<String, String> fields) {
    public OutletMessage {
        requireNonNull(id);
        requireNonNull(body);
        fields = Map.copyOf(fields);
    }

    /** The text of a field; empty where the message says nothing of it. */
    public String field(MessageField field) {
        return fields.getOrDefault(field.key(), "");
    }
}
