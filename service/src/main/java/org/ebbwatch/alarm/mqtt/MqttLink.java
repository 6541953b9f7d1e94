package org.ebbwatch.alarm.mqtt;

import com.hivemq.client.mqtt.MqttClientState;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt5.Mqtt5AsyncClient;
import com.hivemq.client.mqtt.mqtt5.Mqtt5Client;
import com.hivemq.client.mqtt.mqtt5.Mqtt5ClientBuilder;
import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5PublishResult;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import javax.net.ssl.TrustManagerFactory;
import org.ebbwatch.alarm.outlet.TrustedCertificates;

/**
 * The connection to a broker, by MQTT 5. It comes back by itself, after 1 s at first and at most half a minute. Whenever it does,
 * {@code online} is said, retained; the broker itself says that it is not, as the last will, should the service die. Thread-safe.
 */
final class MqttLink implements AutoCloseable {
    private static final int KEEP_ALIVE_SECONDS = 30;
    private static final long FIRST_PAUSE_SECONDS = 1;
    private static final long LONGEST_PAUSE_SECONDS = 30;
    private static final long CLOSING_SECONDS = 2;
    private static final String JSON = "application/json";

    private final MqttSettings settings;
    private final Mqtt5AsyncClient client;
    private final AtomicLong connections = new AtomicLong();
    private volatile String trouble;

    MqttLink(MqttSettings settings) {
        this.settings = settings;
        this.trouble = settings.place() + " has not answered yet";
        this.client = client(settings);
    }

    private Mqtt5AsyncClient client(MqttSettings settings) {
        Mqtt5ClientBuilder builder = Mqtt5Client.builder()
                .identifier(settings.clientId())
                .serverHost(settings.host())
                .serverPort(settings.port())
                .automaticReconnect()
                .initialDelay(FIRST_PAUSE_SECONDS, TimeUnit.SECONDS)
                .maxDelay(LONGEST_PAUSE_SECONDS, TimeUnit.SECONDS)
                .applyAutomaticReconnect()
                .addConnectedListener(connected -> begun())
                .addDisconnectedListener(gone -> trouble = settings.place() + " cannot be reached, or refuses ("
                        + gone.getCause().getClass().getSimpleName() + ')')
                .willPublish()
                .topic(settings.onlineTopic())
                .payload(bytes("false"))
                .qos(MqttQos.AT_LEAST_ONCE)
                .retain(true)
                .applyWillPublish();
        if (settings.encrypted()) {
            TrustManagerFactory trust =
                    settings.trust().map(TrustedCertificates::factory).orElse(null);
            builder = builder.sslConfig().trustManagerFactory(trust).applySslConfig();
        }
        if (settings.login().isPresent()) {
            MqttSettings.Login login = settings.login().get();
            builder = builder.simpleAuth()
                    .username(login.user())
                    .password(bytes(login.password()))
                    .applySimpleAuth();
        }
        return builder.buildAsync();
    }

    /** Begins to connect, and waits for nothing. */
    void open() {
        var unused = client.connectWith()
                .cleanStart(false)
                .sessionExpiryInterval(settings.sessionExpiry().toSeconds())
                .keepAlive(KEEP_ALIVE_SECONDS)
                .send();
    }

    private void begun() {
        connections.incrementAndGet();
        var unused = begin(settings.onlineTopic(), "true", true, "");
    }

    boolean isConnected() {
        return client.getState() == MqttClientState.CONNECTED;
    }

    /** Counts how often the connection came about; another number: the broker may have forgotten what was retained. */
    long connections() {
        return connections.get();
    }

    /** Why nothing gets through; for a person. */
    String trouble() {
        return trouble;
    }

    /**
     * Publishes with quality of service 1 and waits for nothing.
     *
     * @param id which a receiver can tell a repetition by; may be empty
     */
    CompletableFuture<Mqtt5PublishResult> begin(String topic, String payload, boolean retained, String id) {
        var publish = client.publishWith()
                .topic(topic)
                .qos(MqttQos.AT_LEAST_ONCE)
                .retain(retained)
                .contentType(JSON)
                .payload(bytes(payload));
        return id.isEmpty()
                ? publish.send()
                : publish.userProperties()
                        .add("messageId", id)
                        .applyUserProperties()
                        .send();
    }

    /**
     * Publishes and waits until the broker has it.
     *
     * @return why it has not; empty: it has
     */
    String publish(String topic, String payload, String id) throws InterruptedException {
        if (!isConnected()) {
            return trouble;
        }
        CompletableFuture<Mqtt5PublishResult> sent = begin(topic, payload, false, id);
        try {
            return sent.get(settings.patience().toMillis(), TimeUnit.MILLISECONDS)
                    .getError()
                    .map(this::refused)
                    .orElse("");
        } catch (ExecutionException e) {
            return refused(e.getCause());
        } catch (TimeoutException e) {
            return settings.place() + " did not answer in time";
        }
    }

    private String refused(Throwable why) {
        return settings.place() + " does not take it (" + why.getClass().getSimpleName() + ')';
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Says that the service is no longer there, and goes; without a broker, at once. */
    @Override
    public void close() {
        try {
            if (isConnected()) {
                begin(settings.onlineTopic(), "false", true, "").get(CLOSING_SECONDS, TimeUnit.SECONDS);
            }
            client.disconnect().get(CLOSING_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException gone) {
            // Then the last will says it.
        }
    }
}
