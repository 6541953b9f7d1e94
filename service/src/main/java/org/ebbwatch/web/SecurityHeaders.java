package org.ebbwatch.web;

import io.micronaut.http.HttpRequest;
import io.micronaut.http.MutableHttpHeaders;
import io.micronaut.http.MutableHttpResponse;
import io.micronaut.http.annotation.Filter;
import io.micronaut.http.annotation.ResponseFilter;
import io.micronaut.http.annotation.ServerFilter;
import org.ebbwatch.alarm.AcknowledgeLinks;

/** Headers that keep a browser from loading, framing, guessing or leaking anything; and nothing live is ever cached. */
@ServerFilter(Filter.MATCH_ALL_PATTERN)
class SecurityHeaders {
    private static final String CONTENT_POLICY =
            "default-src 'self'; base-uri 'none'; form-action 'none'; object-src 'none'; frame-ancestors 'none'";

    /** The page behind a link has a form and nothing else. */
    private static final String LINK_POLICY =
            "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    @ResponseFilter
    void add(HttpRequest<?> request, MutableHttpResponse<?> response) {
        MutableHttpHeaders headers = response.getHeaders();
        boolean isLink = request.getPath().startsWith(AcknowledgeLinks.PATH);
        headers.set("Content-Security-Policy", isLink ? LINK_POLICY : CONTENT_POLICY);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cache-Control", isLink || request.getPath().startsWith("/api/") ? "no-store" : "no-cache");
    }
}
