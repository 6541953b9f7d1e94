package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.Optional;

/**
 * Whether a browser is signed in.
 *
 * @param signedIn whether it may act
 * @param until when that ends by itself, RFC 3339 in UTC; null where it is not signed in
 */
@Serdeable
public record SessionAnswer(boolean signedIn, @Nullable String until) {
    /** Not signed in. */
    public static final SessionAnswer NONE = new SessionAnswer(false, null);

    /** Signed in until then, Unix time; empty: not signed in. */
    public static SessionAnswer until(Optional<Long> wallMillis) {
        return wallMillis
                .map(until -> new SessionAnswer(true, Figures.wallTime(until)))
                .orElse(NONE);
    }
}
