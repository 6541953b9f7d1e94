package org.ebbwatch.alarm.outlet;

import java.net.ConnectException;
import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Posts each message to one address as JSON, with its id in the header {@code Idempotency-Key}. Any answer of class 2xx takes
 * it. The answers 400, 413, 415 and 422 say that the receiver does not want this very message; every other says not now.
 * Redirects are not followed: a secret must not travel to a place nobody named.
 */
public final class WebhookOutlet implements Outlet {
    /** Its name among outlets. */
    public static final String NAME = "webhook";

    private static final Duration CONNECTING = Duration.ofSeconds(10);
    private static final Duration ANSWERING = Duration.ofSeconds(20);
    private static final long WHOLE_SECONDS = 40;
    private static final Set<Integer> UNWANTED = Set.of(400, 413, 415, 422);

    private final WebhookSettings settings;
    private final HttpClient client = HttpClient.newBuilder()
            .connectTimeout(CONNECTING)
            .followRedirects(Redirect.NEVER)
            .build();

    public WebhookOutlet(WebhookSettings settings) {
        this.settings = settings;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Delivery deliver(OutletMessage message) throws InterruptedException {
        CompletableFuture<HttpResponse<Void>> answer = client.sendAsync(request(message), BodyHandlers.discarding());
        try {
            return delivery(answer.get(WHOLE_SECONDS, TimeUnit.SECONDS).statusCode());
        } catch (ExecutionException e) {
            return new NotTaken(settings.place() + ' ' + why(e.getCause()));
        } catch (TimeoutException e) {
            return new NotTaken(settings.place() + " did not finish its answer");
        } finally {
            answer.cancel(true);
        }
    }

    private HttpRequest request(OutletMessage message) {
        HttpRequest.Builder request = HttpRequest.newBuilder(settings.address())
                .timeout(ANSWERING)
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", message.id().toString())
                .header("User-Agent", "ebbwatch")
                .POST(BodyPublishers.ofString(message.body()));
        settings.headers().forEach(request::header);
        return request.build();
    }

    private Delivery delivery(int status) {
        String told = settings.place() + " answered " + status;
        if (status / 100 == 2) {
            return new Taken();
        }
        return UNWANTED.contains(status) ? new Unwanted(told) : new NotTaken(told);
    }

    private static String why(Throwable failure) {
        if (failure instanceof HttpTimeoutException) {
            return "did not answer in time";
        }
        return failure instanceof ConnectException
                ? "cannot be reached"
                : "cannot be talked to (" + failure.getClass().getSimpleName() + ')';
    }
}
