package org.ebbwatch.alarm.outlet;

import java.net.ConnectException;
import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javax.net.ssl.SSLException;
import org.ebbwatch.acquire.HostClock;

/**
 * Sends each message to one address, with its id in the header {@code Idempotency-Key}. Any answer of class 2xx takes it. The
 * answers 400, 413, 415 and 422 say that the receiver does not want this very message; every other says not now. Redirects are
 * not followed: a secret must not travel to a place nobody named.
 */
public final class WebhookOutlet implements Outlet {
    private static final Set<Integer> UNWANTED = Set.of(400, 413, 415, 422);

    private final String name;
    private final WebhookSettings settings;
    private final HostClock clock;
    private final HttpClient client;

    /**
     * A webhook.
     *
     * @param name under which its messages are kept
     * @param clock whose time is signed
     */
    public WebhookOutlet(String name, WebhookSettings settings, HostClock clock) {
        this.name = name;
        this.settings = settings;
        this.clock = clock;
        HttpClient.Builder builder = HttpClient.newBuilder()
                .connectTimeout(settings.manner().patience())
                .followRedirects(Redirect.NEVER);
        settings.manner().trust().ifPresent(trust -> builder.sslContext(trust.context()));
        this.client = builder.build();
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Delivery deliver(OutletMessage message) throws InterruptedException {
        CompletableFuture<HttpResponse<Void>> answer = client.sendAsync(request(message), BodyHandlers.discarding());
        try {
            long wholeMillis = 2 * settings.manner().patience().toMillis();
            return delivery(answer.get(wholeMillis, TimeUnit.MILLISECONDS).statusCode());
        } catch (ExecutionException e) {
            return new NotTaken(settings.place() + ' ' + why(e.getCause()));
        } catch (TimeoutException e) {
            return new NotTaken(settings.place() + " did not finish its answer");
        } finally {
            answer.cancel(true);
        }
    }

    private HttpRequest request(OutletMessage message) {
        WebhookSettings.Manner manner = settings.manner();
        String body = manner.body().map(it -> it.filled(message.fields())).orElse(message.body());
        HttpRequest.Builder request = HttpRequest.newBuilder(settings.address())
                .timeout(manner.patience())
                .header(
                        "Content-Type",
                        manner.body()
                                .map(BodyTemplate::type)
                                .orElse(BodyTemplate.ContentType.JSON)
                                .header())
                .header("Idempotency-Key", message.id().toString())
                .header("User-Agent", "ebbwatch")
                .method(manner.method().name(), BodyPublishers.ofString(body));
        manner.signature().ifPresent(signature -> {
            long seconds = clock.now().wallMillis() / 1_000;
            request.header(BodySignature.TIME_HEADER, Long.toString(seconds));
            request.header(BodySignature.HEADER, signature.of(seconds, body));
        });
        settings.headers().forEach(request::header);
        return request.build();
    }

    private Delivery delivery(int status) {
        String told = settings.place() + " answered " + status;
        if (status / 100 == 2) {
            return new Taken();
        }
        if (status / 100 == 3) {
            return new NotTaken(told + ": it sends on to another place, and nothing is sent there; give that address");
        }
        return UNWANTED.contains(status) ? new Unwanted(told) : new NotTaken(told);
    }

    private static String why(Throwable failure) {
        if (failure instanceof HttpTimeoutException) {
            return "did not answer in time";
        }
        if (failure instanceof SSLException) {
            return "cannot prove who it is, or speaks no TLS";
        }
        return failure instanceof ConnectException
                ? "cannot be reached"
                : "cannot be talked to (" + failure.getClass().getSimpleName() + ')';
    }
}
