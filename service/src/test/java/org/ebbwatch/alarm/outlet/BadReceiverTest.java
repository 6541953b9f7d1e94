package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.ebbwatch.alarm.outlet.WebhookSettings.Manner;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A receiver that does everything wrong for a while. Whoever puts a message in never waits for it. */
class BadReceiverTest {
    private static final int MESSAGES = 5;

    private final List<String> taken = Collections.synchronizedList(new ArrayList<>());
    private final List<Socket> open = Collections.synchronizedList(new ArrayList<>());
    private final AtomicReference<Manners> manners = new AtomicReference<>(Manners.GOOD);
    private ServerSocket server;

    private enum Manners {
        GOOD,
        /** Reads the request and says nothing. */
        STALLS,
        /** Breaks the connection off. */
        RESETS,
        FAILS,
        REDIRECTS,
        /** Says that much follows, and sends one letter of it. */
        NEVER_ENDS,
        /** Answers with something that is not HTTP. */
        BABBLES
    }

    @BeforeEach
    void listen() throws IOException {
        server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        var thread = new Thread(this::serve, "bad receiver");
        thread.setDaemon(true);
        thread.start();
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
        for (Socket socket : open) {
            socket.close();
        }
    }

    private void serve() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                open.add(socket);
                answer(socket);
            } catch (IOException brokenOff) {
                // The next one.
            }
        }
    }

    private void answer(Socket socket) throws IOException {
        String id = request(socket);
        OutputStream out = socket.getOutputStream();
        switch (manners.get()) {
            case GOOD -> {
                taken.add(id);
                say(out, "HTTP/1.1 204 No Content\r\nConnection: close\r\n\r\n");
            }
            case STALLS -> {}
            case RESETS -> {
                socket.setSoLinger(true, 0);
                socket.close();
            }
            case FAILS -> say(out, "HTTP/1.1 500 Oh\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
            case REDIRECTS ->
                say(out, "HTTP/1.1 307 There\r\nLocation: /there\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
            case NEVER_ENDS -> say(out, "HTTP/1.1 200 OK\r\nContent-Length: 1000\r\n\r\nx");
            case BABBLES -> say(out, "220 mail.example ready\r\n");
        }
    }

    private static void say(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    /** Reads the header of a request and gives the id in it; the body is left alone. */
    private static String request(Socket socket) throws IOException {
        var lines = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
        String id = "";
        for (String line = lines.readLine(); line != null && !line.isEmpty(); line = lines.readLine()) {
            if (line.toLowerCase(Locale.ROOT).startsWith("idempotency-key:")) {
                id = line.substring(line.indexOf(':') + 1).strip();
            }
        }
        return id;
    }

    private WebhookOutlet webhook() {
        var manner =
                new Manner(Method.POST, Optional.empty(), Optional.empty(), Duration.ofMillis(200), Optional.empty());
        String address = "http://localhost:" + server.getLocalPort() + '/';
        return new WebhookOutlet("webhook", new WebhookSettings(address, Map.of(), manner), new ManualTime()::now);
    }

    private static OutletMessage message(long number) {
        return new OutletMessage(new UUID(7, number), number, true, "{}", Map.of());
    }

    @ParameterizedTest
    @EnumSource(value = Manners.class, names = "GOOD", mode = EnumSource.Mode.EXCLUDE)
    void everything_arrives_in_order_once_the_receiver_is_well(Manners bad) {
        manners.set(bad);
        var time = new ManualTime();
        var box = new Outbox(webhook(), (message, wall) -> {});
        try (var agent = new OutletAgent(box, time::now)) {
            agent.start();
            for (long number = 1; number <= MESSAGES; number++) {
                box.put(message(number));
            }
            await().until(() -> box.view().failures() > 0);
            assertThat(box.view().pending()).isEqualTo(MESSAGES);
            assertThat(box.view().lastError()).startsWith("localhost:" + server.getLocalPort() + ' ');

            manners.set(Manners.GOOD);
            box.put(message(MESSAGES + 1));
            await().atMost(Duration.ofMinutes(1)).until(() -> box.view().pending() == 0);
        }
        assertThat(taken)
                .containsExactlyElementsOf(List.of(1L, 2L, 3L, 4L, 5L, 6L).stream()
                        .map(number -> new UUID(7, number).toString())
                        .toList());
    }
}
