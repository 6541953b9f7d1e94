package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.core.order.Ordered;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpMethod;
import io.micronaut.http.HttpRequest;
import io.micronaut.http.annotation.RequestFilter;
import io.micronaut.http.annotation.ServerFilter;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.micronaut.web.router.RouteAttributes;
import java.net.URI;
import java.util.Locale;
import java.util.Set;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/**
 * Lets nobody act who comes under a foreign name, from a foreign page, or with neither the operator's token nor a session for which it
 * was shown. Reading is free.
 */
@ServerFilter("/api/v1/**")
class WriteGate implements Ordered {
    private static final Set<HttpMethod> READING = Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);
    private static final String BEARER = "bearer ";

    private final HostNames names;
    private final TokenFile tokens;
    private final SignedIn signedIn;

    WriteGate(HostNames names, @Nullable TokenFile tokens, SignedIn signedIn) {
        this.names = names;
        this.tokens = tokens;
        this.signedIn = signedIn;
    }

    /** Before all others, so that whoever is refused is told why. */
    @Override
    public int getOrder() {
        return HIGHEST_PRECEDENCE;
    }

    @RequestFilter
    @ExecuteOn(TaskExecutors.BLOCKING)
    void check(HttpRequest<?> request) {
        if (READING.contains(request.getMethod())
                || RouteAttributes.getRouteMatch(request).isEmpty()) {
            return;
        }
        HttpHeaders headers = request.getHeaders();
        String host = headers.get(HttpHeaders.HOST);
        if (host == null || !names.isOurs(host)) {
            throw foreign("The request names the host " + (host == null ? "not at all" : '"' + host + '"') + '.');
        }
        String origin = headers.get(HttpHeaders.ORIGIN);
        if (origin != null && !isOurs(origin)) {
            throw foreign("The request comes from a page of \"" + origin + "\".");
        }
        if (request.getPath().equals(SessionRoutes.PATH)
                || (origin != null && signedIn.until(request).isPresent())) {
            return;
        }
        String shown = headers.get(HttpHeaders.AUTHORIZATION);
        if (shown == null || !shown.toLowerCase(Locale.ROOT).startsWith(BEARER)) {
            throw new ProblemException(ProblemKind.NO_TOKEN, "The request shows no token.");
        }
        if (tokens == null || !tokens.admits(shown.substring(BEARER.length()).strip())) {
            throw new ProblemException(ProblemKind.NO_TOKEN, "The token is not the operator's, or is no longer.");
        }
    }

    private boolean isOurs(String origin) {
        try {
            String authority = URI.create(origin).getRawAuthority();
            return authority != null && names.isOurs(authority);
        } catch (IllegalArgumentException noOrigin) {
            return false;
        }
    }

    private static ProblemException foreign(String detail) {
        return new ProblemException(ProblemKind.FOREIGN_HOST, detail);
    }
}
