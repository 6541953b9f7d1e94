package org.ebbwatch.web;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;

/** An answer of the server, taken with the JDK's own client so that nothing of the server's framework reads it. */
public record Asked(int status, HttpResponse<String> response, String body) {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    /** GET. */
    public static Asked get(EmbeddedServer server, String path) {
        return ask(server, "GET", path);
    }

    /** Any method, without a body. */
    public static Asked ask(EmbeddedServer server, String method, String path, String... headers) {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(server.getURI() + path)).method(method, BodyPublishers.noBody());
        if (headers.length > 0) {
            request.headers(headers);
        }
        try {
            HttpResponse<String> response = CLIENT.send(request.build(), BodyHandlers.ofString());
            return new Asked(response.statusCode(), response, response.body());
        } catch (IOException unreachable) {
            throw new UncheckedIOException(unreachable);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    /** The body as JSON. */
    public JsonNode json() {
        try {
            return JsonMapper.createDefault().readValue(body, JsonNode.class);
        } catch (IOException malformed) {
            throw new UncheckedIOException(body, malformed);
        }
    }

    /** A header, or empty. */
    public String header(String name) {
        return response.headers().firstValue(name).orElse("");
    }
}
