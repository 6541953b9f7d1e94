package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpRequest;
import io.micronaut.http.cookie.Cookie;
import io.micronaut.http.cookie.SameSite;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.access.Sessions;
import org.ebbwatch.acquire.HostClock;

/**
 * Which requests come from a browser that has shown the token: its key is in a cookie that no script can read and that goes with no
 * request of another site. Event streams and downloads cannot send headers; a cookie they send.
 */
@Singleton
class SignedIn {
    private static final String COOKIE = "ebbwatch-session";

    private final Optional<Sessions> sessions;
    private final HostClock clock;

    SignedIn(@Nullable Sessions sessions, HostClock clock) {
        this.sessions = Optional.ofNullable(sessions);
        this.clock = clock;
    }

    /** When the session of this request ends, Unix time; empty where it has none. */
    Optional<Long> until(HttpRequest<?> request) {
        return sessions.flatMap(known -> key(request).flatMap(key -> known.untilMillis(key, nowMillis())));
    }

    /** A session's cookie, and when it ends, Unix time. */
    record Begun(Cookie cookie, long untilMillis) {}

    /** A session for whoever shows the token; empty where it is another one, or nobody can sign in. */
    Optional<Begun> begin(HttpRequest<?> request, String token) throws IOException {
        if (sessions.isEmpty()) {
            return Optional.empty();
        }
        long now = nowMillis();
        Optional<String> key = sessions.get().begin(token, now);
        return key.map(its -> new Begun(
                cookie(request, its).maxAge(Duration.ofDays(Sessions.DAYS)),
                sessions.get().untilMillis(its, now).orElse(now)));
    }

    /** Ends the session of this request, and gives a cookie that takes the other one's place and is gone at once. */
    Cookie end(HttpRequest<?> request) throws IOException {
        Optional<String> key = key(request);
        if (sessions.isPresent() && key.isPresent()) {
            sessions.get().end(key.get());
        }
        return cookie(request, "").maxAge(Duration.ZERO);
    }

    private static Cookie cookie(HttpRequest<?> request, String key) {
        return Cookie.of(COOKIE, key)
                .httpOnly(true)
                .sameSite(SameSite.Strict)
                .secure(request.isSecure())
                .path("/");
    }

    private static Optional<String> key(HttpRequest<?> request) {
        return request.getCookies().findCookie(COOKIE).map(Cookie::getValue);
    }

    private long nowMillis() {
        return clock.now().wallMillis();
    }
}
