package org.ebbwatch.life;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.ebbwatch.passage.BoardPulse;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Against a real receiver that keeps what arrives. */
class SignOfLifeTest {
    private static final long MINUTE = 60_000;

    private final List<String> arrived = new CopyOnWriteArrayList<>();
    private final Progress progress = new Progress();
    private HttpServer server;
    private volatile int status = 200;

    @BeforeEach
    void open() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(status, -1);
            exchange.close();
            arrived.add(exchange.getRequestMethod() + ' ' + exchange.getRequestURI() + ' ' + body);
        });
        server.start();
    }

    @AfterEach
    void close() {
        server.stop(0);
    }

    private SignOfLife sign(boolean post) {
        URI uri = URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/hush?rack=shed");
        return new SignOfLife(new LifeReceiver(uri, post, Duration.ofMinutes(5)));
    }

    private void step(SignOfLife sign, long eventMillis, long monotonicMillis) {
        progress.look(List.of(new BoardPulse("left", true, eventMillis, 1_000)), monotonicMillis);
        sign.step(progress, monotonicMillis);
    }

    private void hasArrived(int signs) {
        await().untilAsserted(() -> assertThat(arrived).hasSize(signs));
    }

    @Test
    void goes_at_once_and_then_at_its_interval() {
        SignOfLife sign = sign(false);
        for (long minute = 0; minute <= 11; minute++) {
            step(sign, minute + 1, minute * MINUTE);
        }

        hasArrived(3);
        assertThat(arrived).containsOnly("GET /hush?rack=shed ");
    }

    @Test
    void a_post_says_that_the_boards_are_heard() {
        step(sign(true), 1, 0);

        hasArrived(1);
        assertThat(arrived).containsExactly("POST /hush?rack=shed All boards are heard.\n");
    }

    @Test
    void none_goes_while_a_board_is_silent_and_one_goes_at_once_when_it_is_heard_again() {
        SignOfLife sign = sign(false);
        step(sign, 1, 0);
        hasArrived(1);
        for (long minute = 1; minute <= 60; minute++) {
            step(sign, 1, minute * MINUTE);
        }
        step(sign, 2, 60 * MINUTE + 1);

        hasArrived(2);
    }

    @Test
    void a_receiver_that_refuses_is_told_on() {
        status = 500;
        SignOfLife sign = sign(false);
        step(sign, 1, 0);
        hasArrived(1);
        step(sign, 2, 5 * MINUTE);

        hasArrived(2);
    }

    @Test
    void the_address_is_not_shown_beyond_its_host() {
        var receiver = new LifeReceiver(URI.create("https://life.example:8443/hush"), false, Duration.ofMinutes(5));

        assertThat(receiver.toString()).contains("life.example:8443").doesNotContain("hush");
    }
}
