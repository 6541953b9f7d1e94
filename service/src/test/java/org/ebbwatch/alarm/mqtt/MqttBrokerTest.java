package org.ebbwatch.alarm.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.hivemq.client.mqtt.datatypes.MqttQos;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.awaitility.core.ConditionFactory;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.mqtt.Listener.Heard;
import org.ebbwatch.alarm.outlet.Cable;
import org.ebbwatch.alarm.outlet.Outbox;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.ebbwatch.alarm.outlet.OutletAgent;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.alarm.outlet.OwnCertificate;
import org.ebbwatch.alarm.outlet.TrustedCertificates;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a real broker tells others of us. */
class MqttBrokerTest {
    private static final Duration PAUSE = Duration.ofMillis(100);

    private static Mosquitto mosquitto;

    private final OneCellRack rack = new OneCellRack();
    private final String prefix = "test/" + UUID.randomUUID();

    /** Once, but asked for by each test, so that each is reported as skipped where there can be none. */
    @BeforeEach
    void startBroker() {
        if (mosquitto == null) {
            mosquitto = Mosquitto.start();
        }
    }

    @AfterAll
    static void stopBroker() {
        if (mosquitto != null) {
            mosquitto.close();
        }
    }

    private static MqttSettings settings(String host, int port, String prefix) {
        return new MqttSettings(
                host,
                port,
                false,
                Optional.empty(),
                Optional.empty(),
                "ebbwatch-" + prefix.replace('/', '-'),
                prefix,
                Duration.ofMinutes(1),
                Duration.ofSeconds(5));
    }

    private MqttBroker broker() {
        return new MqttBroker(settings(mosquitto.host(), mosquitto.port(), prefix));
    }

    private Listener listener(String topics) {
        return new Listener(mosquitto, prefix + topics);
    }

    private static ConditionFactory soon() {
        return await().atMost(Duration.ofMinutes(1));
    }

    private static OutletMessage message(long number) {
        return new OutletMessage(new UUID(7, number), number, true, "{\"number\":" + number + "}", Map.of());
    }

    @Test
    void who_comes_later_hears_that_the_service_is_there_and_what_stands_on_each_channel() {
        try (MqttBroker broker = broker()) {
            broker.start(rack, PAUSE);
            try (Listener before = listener("/#")) {
                soon().until(() -> before.heard().size() == 3);
            }
            try (Listener later = listener("/#")) {
                soon().until(() -> later.heard().size() == 3);
                assertThat(later.heard()).allMatch(Heard::retained);
                assertThat(later.heard())
                        .extracting(Heard::topic)
                        .containsExactlyInAnyOrder(
                                prefix + "/online", prefix + "/channels/shed/3", prefix + "/channels/shed/4");
            }
        }
    }

    @Test
    void a_channel_is_told_again_when_it_changes() {
        try (MqttBroker broker = broker();
                Listener listener = listener("/channels/shed/3")) {
            broker.start(rack, PAUSE);
            soon().until(() -> listener.last().contains("\"celsius\":46.5"));
            rack.becomes(47.25);
            soon().until(() -> listener.last().contains("\"celsius\":47.25"));
            assertThat(listener.heard()).hasSize(2);
        }
    }

    @Test
    void alarms_are_published_at_least_once_and_not_retained() throws InterruptedException {
        try (MqttBroker broker = broker();
                Listener listener = listener("/alarms")) {
            broker.start(rack, PAUSE);
            Outlet outlet = broker.outlet("mqtt");
            soon().until(() -> outlet.deliver(message(1)) instanceof Taken);
            soon().until(() -> listener.heard().size() == 1);
            assertThat(listener.heard())
                    .containsExactly(new Heard(prefix + "/alarms", "{\"number\":1}", false, MqttQos.AT_LEAST_ONCE));
        }
    }

    @Test
    void an_encrypted_broker_is_told_when_it_proves_who_it_is(@TempDir Path folder) throws Exception {
        var own = OwnCertificate.of("localhost", folder);
        try (var cable = Cable.encrypted(mosquitto.host(), mosquitto.port(), own.server());
                var broker = new MqttBroker(encrypted(cable, Optional.of(TrustedCertificates.read(own.pem()))))) {
            broker.start(rack, PAUSE);
            Outlet outlet = broker.outlet("mqtt");
            soon().until(() -> outlet.deliver(message(1)) instanceof Taken);
        }
    }

    @Test
    void an_encrypted_broker_nobody_vouches_for_is_told_nothing(@TempDir Path folder) throws Exception {
        var other = OwnCertificate.of("elsewhere.example", folder);
        for (Optional<TrustedCertificates> trust :
                List.of(Optional.<TrustedCertificates>empty(), Optional.of(TrustedCertificates.read(other.pem())))) {
            try (var cable = Cable.encrypted(mosquitto.host(), mosquitto.port(), other.server());
                    var broker = new MqttBroker(encrypted(cable, trust));
                    Listener listener = listener("/#")) {
                broker.start(rack, PAUSE);
                Outlet outlet = broker.outlet("mqtt");
                soon().until(() -> outlet.deliver(message(1)).toString().contains("cannot be reached, or refuses"));
                assertThat(listener.heard()).isEmpty();
            }
        }
    }

    private MqttSettings encrypted(Cable cable, Optional<TrustedCertificates> trust) {
        return new MqttSettings(
                "localhost",
                cable.port(),
                true,
                trust,
                Optional.empty(),
                "ebbwatch-" + prefix.replace('/', '-'),
                prefix,
                Duration.ofMinutes(1),
                Duration.ofSeconds(5));
    }

    @Test
    void a_service_that_goes_says_so() {
        try (Listener listener = listener("/online")) {
            try (MqttBroker broker = broker()) {
                broker.start(rack, PAUSE);
                soon().until(() -> listener.last().equals("true"));
            }
            soon().until(() -> listener.last().equals("false"));
        }
    }

    @Test
    void of_a_service_that_is_killed_the_broker_says_so() throws Exception {
        Process service = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        MqttBrokerTest.class.getName(),
                        mosquitto.host(),
                        Integer.toString(mosquitto.port()),
                        prefix)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (Listener listener = listener("/online");
                var lines =
                        new BufferedReader(new InputStreamReader(service.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(lines.readLine()).isEqualTo("there");
            soon().until(() -> listener.last().equals("true"));
            service.destroyForcibly().waitFor();
            soon().until(() -> listener.last().equals("false"));
        } finally {
            service.destroyForcibly();
        }
        try (Listener later = listener("/online")) {
            soon().until(() -> later.heard().size() == 1);
            assertThat(later.heard().get(0).payload()).isEqualTo("false");
            assertThat(later.heard().get(0).retained()).isTrue();
        }
    }

    /** A service that is only connected, until it is killed. */
    public static void main(String[] arguments) throws InterruptedException {
        new MqttBroker(settings(arguments[0], Integer.parseInt(arguments[1]), arguments[2]))
                .start(new OneCellRack(), PAUSE);
        System.out.println("there");
        Thread.currentThread().join();
    }

    @Test
    void when_the_cable_is_in_again_everything_arrives_in_order_and_the_service_is_there_again() throws IOException {
        try (var cable = new Cable(mosquitto.host(), mosquitto.port());
                var broker = new MqttBroker(settings("localhost", cable.port(), prefix));
                Listener alarms = listener("/alarms");
                Listener online = listener("/online")) {
            broker.start(rack, PAUSE);
            var box = new Outbox(broker.outlet("mqtt"), (message, wall) -> {});
            try (var agent = new OutletAgent(box, new SystemHostClock())) {
                agent.start();
                box.put(message(1));
                soon().until(() -> alarms.heard().size() == 1);
                cable.pull();
                soon().until(() -> online.last().equals("false"));
                for (long number = 2; number <= 5; number++) {
                    box.put(message(number));
                }
                soon().until(() -> box.view().failures() > 0);
                cable.putIn();
                soon().until(() -> box.view().pending() == 0);
            }
            soon().until(() -> online.last().equals("true"));
            soon().until(() -> alarms.last().equals("{\"number\":5}"));
            assertThat(alarms.payloads().stream().distinct())
                    .as("at least once, and in order")
                    .containsExactly(
                            "{\"number\":1}", "{\"number\":2}", "{\"number\":3}", "{\"number\":4}", "{\"number\":5}");
        }
    }
}
