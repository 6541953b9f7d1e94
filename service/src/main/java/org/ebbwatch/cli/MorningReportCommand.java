package org.ebbwatch.cli;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows what happened overnight, asked of the service that runs. */
@Command(
        name = "morning-report",
        mixinStandardHelpOptions = true,
        description =
                "Shows what happened on the rack since the evening, what each cell waits for and what to do today.")
final class MorningReportCommand implements Callable<Integer> {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @Option(
            names = "--url",
            paramLabel = "URL",
            defaultValue = "http://127.0.0.1:8710",
            description = "where the service's page is; ${DEFAULT-VALUE} where nothing is said")
    private URI url;

    @Option(
            names = "--since",
            paramLabel = "TIME",
            description = "such as 2026-11-24T22:00:00Z; the beginning of the last night where nothing is said")
    private String since;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal, InterruptedException {
        JsonNode report = ask(address());
        PrintWriter out = spec.commandLine().getOut();
        out.print(report.get("text").getStringValue());
        out.flush();
        return 0;
    }

    private URI address() throws Refusal {
        String query = since == null ? "" : "?since=" + URLEncoder.encode(since, StandardCharsets.UTF_8);
        try {
            return url.resolve("/api/v1/morning-report" + query);
        } catch (IllegalArgumentException e) {
            throw new Refusal("the address " + url + " cannot be used: " + e.getMessage());
        }
    }

    private static JsonNode ask(URI address) throws Refusal, InterruptedException {
        String place = address.getScheme() + "://" + address.getAuthority();
        try {
            HttpResponse<String> answer = HttpClient.newHttpClient()
                    .send(HttpRequest.newBuilder(address).timeout(PATIENCE).build(), BodyHandlers.ofString());
            JsonNode body = JsonMapper.createDefault().readValue(answer.body(), JsonNode.class);
            if (answer.statusCode() == 200 && body.get("text") != null) {
                return body;
            }
            JsonNode detail = body.get("detail");
            throw new Refusal("the service at " + place + " answered "
                    + (detail == null ? Integer.toString(answer.statusCode()) : detail.getStringValue()));
        } catch (IOException | IllegalArgumentException e) {
            throw new Refusal("no service answers at " + place
                    + " as Ebbwatch does. Start it with `ebbwatch serve`, or say where it is with --url.");
        }
    }
}
