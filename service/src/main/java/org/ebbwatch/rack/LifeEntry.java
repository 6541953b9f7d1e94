package org.ebbwatch.rack;

import java.util.Optional;

/**
 * Where the sign of life goes, so that its absence can be an alarm.
 *
 * @param url address; empty: it stands in the environment
 * @param urlEnvironment name of the environment variable that holds it
 * @param post whether it is a POST; else a GET
 * @param everyMinutes how often, 1 to 1440
 */
public record LifeEntry(Optional<String> url, Optional<String> urlEnvironment, boolean post, int everyMinutes) {
    public LifeEntry {
        if (url.isPresent() == urlEnvironment.isPresent()) {
            throw new IllegalArgumentException("an address is given in the file or in the environment");
        }
    }
}
