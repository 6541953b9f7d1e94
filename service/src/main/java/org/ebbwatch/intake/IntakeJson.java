package org.ebbwatch.intake;

import io.micronaut.core.type.Argument;
import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.passage.RecordJson;

/** What stands on a card as text. */
final class IntakeJson {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    private IntakeJson() {}

    static String write(IntakeFields card) {
        try {
            return MAPPER.writeValueAsString(RecordJson.toMap(card));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if it is no such text
     */
    static IntakeFields read(String text) {
        try {
            return RecordJson.fromMap(
                    IntakeFields.class, MAPPER.readValue(text, Argument.mapOf(String.class, Object.class)));
        } catch (IOException e) {
            throw new IllegalArgumentException("not a card: " + text, e);
        }
    }
}
