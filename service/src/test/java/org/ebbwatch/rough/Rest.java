package org.ebbwatch.rough;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Optional;

/** Requests of a service that may be gone at any moment. */
final class Rest {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private final ServeProcess service;

    Rest(ServeProcess service) {
        this.service = service;
    }

    /** What was asked for, with its ETag; empty where nobody answers or it is refused. */
    Optional<Got> get(String path) throws InterruptedException {
        return send(HttpRequest.newBuilder(uri(path)).GET());
    }

    /** Acts on what was seen as {@code tag} says; empty where nobody answers or it is refused. */
    Optional<Got> post(String path, String body, String tag, String key) throws InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(uri(path))
                .header("Authorization", "Bearer " + service.token())
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", key)
                .POST(BodyPublishers.ofString(body));
        if (!tag.isEmpty()) {
            request.header("If-Match", tag);
        }
        return send(request);
    }

    /** An answer that says yes. */
    record Got(JsonNode json, String tag) {}

    private URI uri(String path) {
        return URI.create(service.url() + path);
    }

    private Optional<Got> send(HttpRequest.Builder request) throws InterruptedException {
        try {
            HttpResponse<String> response =
                    client.send(request.timeout(PATIENCE).build(), BodyHandlers.ofString());
            return response.statusCode() / 100 == 2
                    ? Optional.of(new Got(
                            JsonMapper.createDefault().readValue(response.body(), JsonNode.class),
                            response.headers().firstValue("ETag").orElse("")))
                    : Optional.empty();
        } catch (IOException gone) {
            return Optional.empty();
        }
    }
}
