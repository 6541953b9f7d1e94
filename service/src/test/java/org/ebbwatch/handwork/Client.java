package org.ebbwatch.handwork;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.LinkedHashMap;
import java.util.Map;

/** Sends requests as the page or a script would, by the JDK's own client. */
public final class Client {
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    private final Place place;
    private int keys;

    public Client(Place place) {
        this.place = place;
    }

    /** What came back. */
    public record Answer(int status, Map<String, String> headers, String body) {
        public JsonNode json() {
            try {
                return JsonMapper.createDefault().readValue(body, JsonNode.class);
            } catch (IOException e) {
                throw new UncheckedIOException(body, e);
            }
        }

        /** A field of the body as text. */
        public String text(String field) {
            return json().get(field).getStringValue();
        }

        public String header(String name) {
            return headers.getOrDefault(name, "");
        }
    }

    public Answer get(String path) {
        return send("GET", path, null, Map.of());
    }

    /** The ETag of a passage. */
    public String tag(String id) {
        return tagAt("/api/v1/passages/" + id);
    }

    private String tagAt(String path) {
        return get(path).header("etag");
    }

    /** Posts as it should be done: with the token, the ETag as it is now, and a new key. */
    public Answer post(String path, String body) {
        return post(path, body, Map.of());
    }

    /** The same with some headers as given here; an empty one is left out. */
    public Answer post(String path, String body, Map<String, String> headers) {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("Authorization", "Bearer " + place.token());
        all.put("Content-Type", "application/json");
        all.put("Idempotency-Key", "key-of-request-" + place.rack().wallMillis() + '-' + ++keys);
        String[] parts = path.split("/", -1);
        if (parts.length > 5 && !headers.containsKey("If-Match")) {
            all.put("If-Match", tagAt(path.substring(0, path.lastIndexOf('/'))));
        }
        all.putAll(headers);
        all.values().removeIf(String::isEmpty);
        return send("POST", path, body, all);
    }

    /** Sends a photo as it should be sent, in bytes. */
    public Answer photo(String path, byte[] content, String mediaType) {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("Authorization", "Bearer " + place.token());
        all.put("Content-Type", mediaType);
        all.put("Idempotency-Key", "key-of-photo-" + ++keys);
        all.put("If-Match", tagAt(path.substring(0, path.lastIndexOf('/'))));
        return sendBody("POST", path, BodyPublishers.ofByteArray(content), all);
    }

    private Answer send(String method, String path, String body, Map<String, String> headers) {
        return sendBody(method, path, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body), headers);
    }

    private Answer sendBody(String method, String path, HttpRequest.BodyPublisher body, Map<String, String> headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create(place.server().getURI() + path))
                .method(method, body);
        headers.forEach(request::header);
        try {
            HttpResponse<String> response = HTTP.send(request.build(), BodyHandlers.ofString());
            Map<String, String> got = new LinkedHashMap<>();
            response.headers().map().forEach((name, values) -> got.put(name, String.join(", ", values)));
            return new Answer(response.statusCode(), got, response.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
