package org.ebbwatch.rack;

import java.util.List;
import java.util.Optional;

/**
 * Where alarms are posted. What is secret stands in the environment, and only its name here.
 *
 * @param url address, or the name of the environment variable that holds it
 * @param headers sent with every message
 */
public record WebhookEntry(Given url, List<HeaderEntry> headers) {
    public WebhookEntry {
        headers = List.copyOf(headers);
    }

    /** A header and its value. */
    public record HeaderEntry(String name, Given value) {}

    /**
     * A text that stands in the rack file or in the environment; exactly one of both.
     *
     * @param text as it stands in the rack file
     * @param environment name of the environment variable that holds it
     */
    public record Given(Optional<String> text, Optional<String> environment) {
        public Given {
            if (text.isPresent() == environment.isPresent()) {
                throw new IllegalArgumentException("a text is given in the file or in the environment");
            }
        }
    }
}
