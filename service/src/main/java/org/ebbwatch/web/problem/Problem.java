package org.ebbwatch.web.problem;

import io.micronaut.http.HttpStatus;
import io.micronaut.serde.annotation.Serdeable;

/**
 * Problem details (RFC 9457).
 *
 * @param type which problem; a reference that can be followed, or about:blank
 * @param title the problem in short, the same each time
 * @param status the HTTP status
 * @param detail what was wrong this time, and what to do
 * @param instance the path that was asked for
 */
@Serdeable
public record Problem(String type, String title, int status, String detail, String instance) {

    static Problem of(ProblemKind kind, String detail, String instance) {
        return new Problem(kind.type(), kind.title(), kind.status().getCode(), detail, instance);
    }

    /** A problem that means no more than its status. */
    static Problem of(HttpStatus status, String instance) {
        return new Problem(
                "about:blank",
                status.getReason(),
                status.getCode(),
                "The request cannot be answered as it stands; /api/v1/openapi.yml says what can be asked.",
                instance);
    }
}
