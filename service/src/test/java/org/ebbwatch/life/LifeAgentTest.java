package org.ebbwatch.life;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.passage.BoardPulse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The thread with the service manager at its other end. */
@EnabledOnOs(OS.LINUX)
class LifeAgentTest {

    @Test
    void says_ready_feeds_and_stops(@TempDir Path directory) {
        String address = directory.resolve("notify").toString();
        var event = new AtomicLong();
        try (var receiver = new DatagramReceiver(address)) {
            var agent = new LifeAgent(
                    () -> List.of(new BoardPulse("left", true, event.incrementAndGet(), 1_000)),
                    new SystemHostClock(),
                    Optional.empty(),
                    Map.of("NOTIFY_SOCKET", address, "WATCHDOG_USEC", "1000000"));
            agent.start();
            assertThat(receiver.next()).startsWith("READY=1\n");
            await().untilAsserted(() -> assertThat(receiver.next()).isEqualTo("WATCHDOG=1\n"));

            agent.close();
            await().untilAsserted(() -> assertThat(receiver.next()).isEqualTo("STOPPING=1\n"));
        }
    }
}
