package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.ebbwatch.alarm.outlet.Outlet.Delivery;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.ebbwatch.alarm.outlet.WebhookSettings.Manner;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A receiver with a certificate that nobody signed but itself. */
class EncryptedWebhookTest {
    @TempDir
    Path folder;

    private final AtomicInteger received = new AtomicInteger();
    private HttpsServer server;

    private void start(OwnCertificate shown) throws IOException {
        server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(shown.server()));
        server.createContext("/", exchange -> {
            received.incrementAndGet();
            exchange.sendResponseHeaders(204, -1);
            exchange.close();
        });
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop(0);
    }

    private Delivery deliver(Optional<TrustedCertificates> trust) throws InterruptedException {
        var manner = new Manner(Method.POST, Optional.empty(), Optional.empty(), Duration.ofSeconds(5), trust);
        String address = "https://localhost:" + server.getAddress().getPort() + '/';
        return new WebhookOutlet("webhook", new WebhookSettings(address, Map.of(), manner), new ManualTime()::now)
                .deliver(new OutletMessage(new UUID(7, 1), 1, true, "{}", Map.of()));
    }

    @Test
    void it_is_told_when_the_rack_file_vouches_for_it() throws Exception {
        var own = OwnCertificate.of("localhost", folder);
        start(own);
        assertThat(deliver(Optional.of(TrustedCertificates.read(own.pem())))).isEqualTo(new Taken());
        assertThat(received).hasValue(1);
    }

    @Test
    void it_is_told_nothing_when_nobody_does() throws Exception {
        start(OwnCertificate.of("localhost", folder));
        assertThat(deliver(Optional.empty()))
                .isEqualTo(new NotTaken(
                        "localhost:" + server.getAddress().getPort() + " cannot prove who it is, or speaks no TLS"));
        assertThat(received).hasValue(0);
    }

    @Test
    void it_is_told_nothing_when_it_is_another_host() throws Exception {
        var other = OwnCertificate.of("elsewhere.example", folder);
        start(other);
        assertThat(deliver(Optional.of(TrustedCertificates.read(other.pem())))).isInstanceOf(NotTaken.class);
        assertThat(received).hasValue(0);
    }
}
