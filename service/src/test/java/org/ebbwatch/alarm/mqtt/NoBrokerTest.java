package org.ebbwatch.alarm.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.Outlet.Delivery;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.junit.jupiter.api.Test;

class NoBrokerTest {

    @Test
    void without_a_broker_nobody_waits_and_the_reason_is_told_without_the_password() throws Exception {
        int nobody;
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            nobody = socket.getLocalPort();
        }
        var settings = new MqttSettings(
                "localhost",
                nobody,
                false,
                Optional.empty(),
                Optional.of(new MqttSettings.Login("rack", "hush")),
                "ebbwatch",
                "ebbwatch",
                Duration.ZERO,
                Duration.ofMinutes(1));
        var message = new OutletMessage(new UUID(7, 1), 1, true, "{}", Map.of());
        try (var broker = new MqttBroker(settings)) {
            Outlet outlet = broker.outlet("mqtt");
            assertThat(outlet.deliver(message))
                    .isEqualTo(new NotTaken("localhost:" + nobody + " has not answered yet"));

            broker.start(new OneCellRack(), Duration.ofMillis(100));

            Delivery[] last = new Delivery[1];
            await().until(() -> {
                last[0] = outlet.deliver(message);
                return last[0].toString().contains("cannot be reached");
            });
            assertThat(last[0].toString() + settings).doesNotContain("hush");
        }
    }
}
