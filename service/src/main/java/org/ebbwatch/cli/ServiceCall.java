package org.ebbwatch.cli;

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
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.cli.Ebbwatch.Refusal;

/** Asks a running service over REST, as its operator. */
final class ServiceCall {
    /** The environment variable that holds the operator's token. */
    static final String TOKEN = "EBBWATCH_TOKEN";

    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final JsonMapper MAPPER = JsonMapper.createDefault();

    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private final URI service;
    private final String token;

    ServiceCall(URI service, String token) {
        this.service = service;
        this.token = token;
    }

    /**
     * The operator's token from the environment.
     *
     * @throws Refusal if it is not there
     */
    static String token(Map<String, String> environment) throws Refusal {
        String token = environment.getOrDefault(TOKEN, "");
        if (token.isBlank()) {
            throw new Refusal("no token: put the operator's token into the environment variable " + TOKEN);
        }
        return token.strip();
    }

    JsonNode get(String path) throws Refusal {
        return send(request(path).GET().build());
    }

    /**
     * Posts with a key of its own.
     *
     * @throws Refusal if the service refuses it, or does not answer
     */
    JsonNode post(String path, Map<String, Object> body) throws Refusal {
        try {
            return send(request(path)
                    .header("Content-Type", "application/json")
                    .header("Idempotency-Key", "command-" + UUID.randomUUID())
                    .POST(BodyPublishers.ofString(MAPPER.writeValueAsString(body)))
                    .build());
        } catch (IOException e) {
            throw new Refusal("the request cannot be written: " + e.getMessage());
        }
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(service.resolve(path))
                .timeout(PATIENCE)
                .header("Authorization", "Bearer " + token);
    }

    private JsonNode send(HttpRequest request) throws Refusal {
        try {
            HttpResponse<String> response = http.send(request, BodyHandlers.ofString());
            JsonNode answer = MAPPER.readValue(response.body(), JsonNode.class);
            if (response.statusCode() >= 300) {
                throw new Refusal("the service refused it: " + text(answer, "detail"));
            }
            return answer;
        } catch (IOException e) {
            throw new Refusal("no service answers at " + service + " (" + e.getMessage()
                    + "). Is it running? The page's address is the one to name with --service.");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refusal("stopped; what was begun goes on in the service until it ends by itself");
        }
    }

    private static String text(JsonNode answer, String field) {
        JsonNode held = answer == null ? null : answer.get(field);
        return held == null ? "it did not say why" : held.coerceStringValue();
    }
}
