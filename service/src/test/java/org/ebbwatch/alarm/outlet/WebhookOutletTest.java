package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ebbwatch.alarm.outlet.BodyTemplate.ContentType;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.ebbwatch.alarm.outlet.Outlet.Unwanted;
import org.ebbwatch.alarm.outlet.WebhookSettings.Manner;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A webhook against a real HTTP server on this machine. */
class WebhookOutletTest {
    private static final String SECRET = "Bearer hush-1234";

    private final List<Received> received = Collections.synchronizedList(new ArrayList<>());
    private final ManualTime time = new ManualTime();
    private HttpServer server;
    private InetSocketAddress address;
    private volatile int status = 200;
    private volatile Headers headers;

    private record Received(String method, String path, String id, String type, String authorization, String body) {}

    @BeforeEach
    void startServer() throws IOException {
        start(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
    }

    private void start(InetSocketAddress where) throws IOException {
        server = HttpServer.create(where, 0);
        server.createContext("/", this::answer);
        server.start();
        address = server.getAddress();
    }

    @AfterEach
    void stopServer() {
        server.stop(0);
    }

    private void answer(HttpExchange exchange) throws IOException {
        String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        var headers = exchange.getRequestHeaders();
        received.add(new Received(
                exchange.getRequestMethod(),
                exchange.getRequestURI().toString(),
                headers.getFirst("Idempotency-Key"),
                headers.getFirst("Content-Type"),
                headers.getFirst("Authorization"),
                body));
        this.headers = headers;
        if (status / 100 == 3) {
            exchange.getResponseHeaders().set("Location", "/elsewhere");
        }
        exchange.sendResponseHeaders(status, -1);
        exchange.close();
    }

    private WebhookOutlet webhook() {
        return webhook(Manner.USUAL);
    }

    private WebhookOutlet webhook(Manner manner) {
        return new WebhookOutlet(
                "webhook",
                new WebhookSettings(
                        "http://" + address.getHostString() + ':' + address.getPort() + "/hook?token=hush",
                        Map.of("Authorization", SECRET),
                        manner),
                time::now);
    }

    private static OutletMessage message(long number) {
        return new OutletMessage(
                new UUID(7, number),
                number,
                true,
                "{\"number\":" + number + ",\"what\":\"µ 電\"}",
                Map.of("what", "µ \"電\""));
    }

    @Test
    void a_message_is_posted_as_json_with_its_id_and_the_headers() throws InterruptedException {
        assertThat(webhook().deliver(message(1))).isEqualTo(new Taken());

        assertThat(received)
                .containsExactly(new Received(
                        "POST",
                        "/hook?token=hush",
                        new UUID(7, 1).toString(),
                        "application/json",
                        SECRET,
                        "{\"number\":1,\"what\":\"µ 電\"}"));
    }

    @ParameterizedTest
    @ValueSource(ints = {200, 201, 202, 204})
    void any_good_answer_takes_it(int answer) throws InterruptedException {
        status = answer;
        assertThat(webhook().deliver(message(1))).isInstanceOf(Taken.class);
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 413, 415, 422})
    void some_answers_say_that_this_message_is_not_wanted(int answer) throws InterruptedException {
        status = answer;
        assertThat(webhook().deliver(message(1))).isInstanceOf(Unwanted.class);
    }

    @Test
    void method_body_and_signature_are_as_they_were_asked_for() throws InterruptedException {
        var body = new BodyTemplate("{\"text\": \"${what}\"}", ContentType.JSON);
        var signature = new BodySignature("a secret of both sides");
        webhook(new Manner(
                        Method.PUT, Optional.of(body), Optional.of(signature), Duration.ofSeconds(5), Optional.empty()))
                .deliver(message(1));

        String text = "{\"text\": \"µ \\\"電\\\"\"}";
        assertThat(received)
                .extracting(Received::method, Received::body, Received::type)
                .containsExactly(tuple("PUT", text, "application/json"));
        long seconds = time.now().wallMillis() / 1000;
        assertThat(headers.getFirst("Ebbwatch-Signed-At")).isEqualTo(Long.toString(seconds));
        assertThat(headers.getFirst("Ebbwatch-Signature")).isEqualTo(signature.of(seconds, text));
    }

    @ParameterizedTest
    @ValueSource(ints = {301, 302, 307, 308})
    void a_redirect_is_a_failure_that_says_so_and_is_not_followed(int answer) throws InterruptedException {
        status = answer;
        assertThat(webhook().deliver(message(1)))
                .isEqualTo(new NotTaken(address.getHostString() + ':' + address.getPort() + " answered " + answer
                        + ": it sends on to another place, and nothing is sent there; give that address"));
        assertThat(received).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(ints = {401, 403, 404, 410, 429, 500, 503})
    void every_other_answer_says_not_now(int answer) throws InterruptedException {
        status = answer;
        assertThat(webhook().deliver(message(1)))
                .isEqualTo(new NotTaken(address.getHostString() + ':' + address.getPort() + " answered " + answer));
        assertThat(received).hasSize(1);
    }

    @Test
    void a_receiver_that_was_down_for_hours_gets_every_message_in_order_with_the_ids_it_had() throws Exception {
        List<OutletMessage> sent = new ArrayList<>();
        var box = new Outbox(webhook(), (message, wall) -> sent.add(message));
        server.stop(0);
        for (long number = 1; number <= 12; number++) {
            box.put(message(number));
            box.attempt(time.now());
            time.pass(1_200_000);
        }
        assertThat(box.view().pending()).isEqualTo(12);
        assertThat(box.view().lastError()).endsWith("cannot be reached");

        start(address);
        status = 503;
        box.attempt(time.now());
        status = 200;
        time.pass(300_000);
        while (box.view().pending() > 0) {
            box.attempt(time.now());
        }

        assertThat(sent)
                .extracting(OutletMessage::number)
                .containsExactly(1L, 2L, 3L, 4L, 5L, 6L, 7L, 8L, 9L, 10L, 11L, 12L);
        assertThat(received.subList(1, 13))
                .extracting(Received::id)
                .containsExactlyElementsOf(
                        sent.stream().map(message -> message.id().toString()).toList());
        assertThat(received.get(0)).as("a repetition is byte for byte the same").isEqualTo(received.get(1));
    }

    @Test
    void no_secret_is_shown() throws InterruptedException {
        server.stop(0);
        assertThat(webhook().deliver(message(1)).toString())
                .doesNotContain("hush")
                .contains("cannot be reached");
        assertThat(new WebhookSettings("https://example.org/hush", Map.of("X", "hush")).toString())
                .isEqualTo("webhook at example.org");
        assertThatThrownBy(() -> new WebhookSettings("https://example.org", Map.of("X", "hush\r\nY: 1")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("header X")
                .hasMessageNotContaining("hush");
        assertThatThrownBy(() -> new WebhookSettings("hush me", Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageNotContaining("hush");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "example.org/hook", "ftp://example.org", "http:///hook", "mailto:a@example.org"})
    void what_is_no_address_is_refused(String text) {
        assertThatThrownBy(() -> WebhookSettings.checkAddress(text)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "A B", "Host", "content-length", "Idempotency-Key", "ebbwatch-signature", "X:"})
    void what_is_no_header_of_ones_own_is_refused(String name) {
        assertThatThrownBy(() -> WebhookSettings.checkName(name)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void the_agent_empties_the_box_on_its_own_thread_and_stops() throws Exception {
        var taken = new CountDownLatch(3);
        var box = new Outbox(webhook(), (message, wall) -> taken.countDown());
        box.put(message(1));
        try (var agent = new OutletAgent(box, time::now)) {
            agent.start();
            box.put(message(2));
            box.put(message(3));
            assertThat(taken.await(30, TimeUnit.SECONDS)).isTrue();
        }
        assertThat(received).extracting(Received::body).isSorted();
        assertThat(Thread.getAllStackTraces().keySet())
                .extracting(Thread::getName)
                .doesNotContain("outlet webhook");
    }
}
