package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class SecurityHeadersTest {
    @Inject
    private EmbeddedServer server;

    @ParameterizedTest
    @CsvSource({
        "/, 200, no-cache",
        "/rack.js, 200, no-cache",
        "/api/v1/rack, 200, no-store",
        "/api/v1/openapi.yml, 200, no-store",
        "/api/v1/passages/x, 400, no-store",
        "/nowhere, 404, no-cache",
        "/health, 200, no-cache",
        "/prometheus, 200, no-cache"
    })
    void every_answer_ties_the_browser_down(String path, int status, String caching) {
        Asked answer = Asked.get(server, path);

        assertThat(answer.status()).isEqualTo(status);
        assertThat(answer.header("Content-Security-Policy"))
                .contains("default-src 'self'")
                .contains("frame-ancestors 'none'");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Referrer-Policy")).isEqualTo("no-referrer");
        assertThat(answer.header("Cache-Control")).isEqualTo(caching);
        assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
    }
}
