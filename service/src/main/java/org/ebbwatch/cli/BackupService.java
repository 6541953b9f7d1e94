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
import org.ebbwatch.cli.Ebbwatch.Refusal;

/** A running service that is asked for a backup. */
final class BackupService {
    private static final Duration CONNECTING = Duration.ofSeconds(30);
    /** A large database takes its time. */
    private static final Duration COPYING = Duration.ofMinutes(30);

    private BackupService() {}

    /** Asks for one; gives the file's path on the service's machine. */
    static String ask(URI service, String token) throws Refusal {
        HttpClient http = HttpClient.newBuilder().connectTimeout(CONNECTING).build();
        HttpRequest request = HttpRequest.newBuilder(service.resolve("/api/v1/backups"))
                .timeout(COPYING)
                .header("Authorization", "Bearer " + token)
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString("{}"))
                .build();
        try {
            HttpResponse<String> response = http.send(request, BodyHandlers.ofString());
            JsonNode answer = JsonMapper.createDefault().readValue(response.body(), JsonNode.class);
            String field = response.statusCode() == 201 ? "file" : "detail";
            JsonNode said = answer == null ? null : answer.get(field);
            if (response.statusCode() != 201 || said == null) {
                throw new Refusal("the service made no backup: "
                        + (said == null ? response.statusCode() : said.coerceStringValue()));
            }
            return said.coerceStringValue();
        } catch (IOException e) {
            throw new Refusal("no service answers at " + service + " (" + e.getMessage() + "). Is it running?");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refusal("stopped waiting; the service may go on making the backup");
        }
    }
}
