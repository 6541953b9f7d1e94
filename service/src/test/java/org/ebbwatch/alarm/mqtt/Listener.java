package org.ebbwatch.alarm.mqtt;

import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt3.Mqtt3BlockingClient;
import com.hivemq.client.mqtt.mqtt3.Mqtt3Client;
import com.hivemq.client.mqtt.mqtt3.message.publish.Mqtt3Publish;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;

/** Hears all that a broker has to tell, and keeps it; by the older MQTT 3.1.1, as many receivers do. */
final class Listener implements AutoCloseable {
    private final List<Heard> heard = Collections.synchronizedList(new ArrayList<>());
    private final Mqtt3BlockingClient client;

    /** What was heard. */
    record Heard(String topic, String payload, boolean retained, MqttQos quality) {
        static Heard of(Mqtt3Publish publish) {
            return new Heard(
                    publish.getTopic().toString(),
                    new String(publish.getPayloadAsBytes(), StandardCharsets.UTF_8),
                    publish.isRetain(),
                    publish.getQos());
        }
    }

    Listener(Mosquitto broker, String topics) {
        client = Mqtt3Client.builder()
                .identifier("listener-" + UUID.randomUUID())
                .serverHost(broker.host())
                .serverPort(broker.port())
                .buildBlocking();
        client.connect();
        client.toAsync()
                .subscribeWith()
                .topicFilter(topics)
                .qos(MqttQos.AT_LEAST_ONCE)
                .callback(publish -> heard.add(Heard.of(publish)))
                .send()
                .join();
    }

    List<Heard> heard() {
        synchronized (heard) {
            return List.copyOf(heard);
        }
    }

    List<String> payloads() {
        return heard().stream().map(Heard::payload).toList();
    }

    String last() {
        List<String> all = payloads();
        return all.isEmpty() ? "" : all.get(all.size() - 1);
    }

    @Override
    public void close() {
        client.disconnect();
    }
}
