package org.ebbwatch.life;

import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says "all is well" to an address, again and again, as long as all is: whoever is there raises the alarm when it stays away. What
 * is not well is never said there, because whatever arrives counts as a sign of life. Redirects are not followed; only host and
 * port of the address are ever logged, since the rest may be a secret.
 *
 * <p>Has no thread: {@link #step} is called about once a second and waits for nothing. Not thread-safe.
 */
final class SignOfLife {
    private static final Logger LOG = LoggerFactory.getLogger(SignOfLife.class);
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final LifeReceiver receiver;
    private final HttpClient client = HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(Redirect.NEVER)
            .build();
    private CompletableFuture<HttpResponse<Void>> underway = new CompletableFuture<>();
    private boolean sent;
    private long sentMillis;
    private boolean wasWell;
    private String failure = "";

    SignOfLife(LifeReceiver receiver) {
        this.receiver = receiver;
    }

    /** Sends the sign if it is time and all is well; says so when it stops and when it goes on. */
    void step(Progress progress, long monotonicMillis) {
        tellChange(progress);
        if (sent && underway.isDone()) {
            tellAnswer();
        }
        boolean due = !sent || monotonicMillis - sentMillis >= receiver.every().toMillis();
        if (progress.isWell() && due) {
            sent = true;
            sentMillis = monotonicMillis;
            underway = client.sendAsync(request(), BodyHandlers.discarding());
        }
    }

    private void tellChange(Progress progress) {
        if (wasWell && !progress.isWell()) {
            LOG.warn("No sign of life goes to {} any more: {}", receiver.place(), progress.trouble());
        } else if (!wasWell && progress.isWell()) {
            LOG.info("Signs of life go to {}: every board is heard", receiver.place());
            sent = false;
        }
        wasWell = progress.isWell();
    }

    private void tellAnswer() {
        String now = underway.handle((answer, fault) -> fault != null
                        ? "cannot be reached (" + fault.getClass().getSimpleName() + ')'
                        : answer.statusCode() / 100 == 2 ? "" : "answered " + answer.statusCode())
                .join();
        if (!now.equals(failure)) {
            failure = now;
            if (now.isEmpty()) {
                LOG.info("Signs of life reach {} again", receiver.place());
            } else {
                LOG.warn("The sign of life does not arrive: {} {}; it is sent on", receiver.place(), now);
            }
        }
    }

    private HttpRequest request() {
        HttpRequest.Builder request =
                HttpRequest.newBuilder(receiver.uri()).timeout(PATIENCE).header("User-Agent", "ebbwatch");
        return receiver.post()
                ? request.header("Content-Type", "text/plain; charset=utf-8")
                        .POST(BodyPublishers.ofString("All boards are heard.\n"))
                        .build()
                : request.GET().build();
    }
}
