package org.ebbwatch.life;

import static java.util.Objects.requireNonNull;

import java.net.URI;
import java.time.Duration;

/**
 * Where signs of life go.
 *
 * @param uri http or https; may hold a secret
 * @param post whether it is a POST; else a GET
 * @param every how often
 */
public record LifeReceiver(URI uri, boolean post, Duration every) {
    public LifeReceiver {
        requireNonNull(uri);
        requireNonNull(every);
    }

    /** Host and port: all of the address that is shown. */
    String place() {
        return uri.getPort() < 0 ? uri.getHost() : uri.getHost() + ':' + uri.getPort();
    }

    @Override
    public String toString() {
        return "sign of life to " + place();
    }
}
