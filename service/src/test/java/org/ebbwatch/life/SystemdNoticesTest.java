package org.ebbwatch.life;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.ebbwatch.passage.BoardPulse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against a real local datagram socket. Lines and variables from sd_notify(3) and sd_watchdog_enabled(3), from memory. */
@EnabledOnOs(OS.LINUX)
class SystemdNoticesTest {
    private static final long PID = 4711;

    private final Progress progress = new Progress();

    @TempDir
    Path directory;

    private void heard(long eventMillis, long monotonicMillis) {
        progress.look(List.of(new BoardPulse("left", true, eventMillis, 1_000)), monotonicMillis);
    }

    private static SystemdNotices manager(String address, String microseconds) {
        return SystemdNotices.of(Map.of("NOTIFY_SOCKET", address, "WATCHDOG_USEC", microseconds), PID)
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"path", "abstract"})
    void it_is_told_of_the_beginning_and_of_the_end(String how) {
        String address = how.equals("path")
                ? directory.resolve("notify").toString()
                : "@ebbwatch-test-" + ProcessHandle.current().pid();
        try (var receiver = new DatagramReceiver(address)) {
            SystemdNotices manager = manager(address, "");
            manager.ready();
            assertThat(receiver.next().lines()).contains("READY=1");

            manager.close();
            assertThat(receiver.next().lines()).containsExactly("STOPPING=1");
            assertThat(receiver.next()).isEmpty();
        }
    }

    @Test
    void the_watchdog_is_fed_at_half_its_time_while_a_board_is_heard_and_never_after() {
        String address = directory.resolve("notify").toString();
        try (var receiver = new DatagramReceiver(address);
                SystemdNotices manager = manager(address, "4000000")) {
            heard(1_000, 0);
            manager.step(progress, 0);
            assertThat(receiver.next()).isEqualTo("WATCHDOG=1\n");

            manager.step(progress, 1_999);
            assertThat(receiver.next()).isEmpty();
            manager.step(progress, 2_000);
            assertThat(receiver.next()).isEqualTo("WATCHDOG=1\n");

            heard(1_000, 5_001);
            manager.step(progress, 5_001);
            assertThat(receiver.next()).as("the only board says nothing").isEmpty();

            heard(2_000, 6_000);
            manager.step(progress, 6_000);
            assertThat(receiver.next()).isEqualTo("WATCHDOG=1\n");
        }
    }

    @Test
    void a_manager_that_is_away_disturbs_nothing_and_is_told_again_when_it_is_back() {
        String address = directory.resolve("notify").toString();
        try (SystemdNotices manager = manager(address, "2000000")) {
            manager.ready();
            heard(1_000, 0);
            manager.step(progress, 0);
            try (var receiver = new DatagramReceiver(address)) {
                manager.step(progress, 1_000);
                assertThat(receiver.next()).isEqualTo("WATCHDOG=1\n");
            }
        }
    }

    @Test
    void without_a_manager_there_is_nobody_to_tell() {
        assertThat(SystemdNotices.of(Map.of(), PID)).isEmpty();
        assertThat(SystemdNotices.of(Map.of("NOTIFY_SOCKET", "relative/path"), PID))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "@", "relative", "vsock:2:1234"})
    void what_is_no_address_is_refused(String address) {
        assertThatThrownBy(() -> NotifySocket.to(address))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("not the address");
    }

    @Test
    void a_path_that_does_not_fit_is_refused() {
        assertThatThrownBy(() -> NotifySocket.to("/" + "x".repeat(107))).isInstanceOf(IOException.class);
    }

    @ParameterizedTest
    @CsvSource({
        "30000000, '', 15000",
        "30000000, 4711, 15000",
        "30000000, 4712, -1",
        "'', '', -1",
        "0, '', -1",
        "-5, '', -1",
        "soon, '', -1",
        "1, '', 1"
    })
    void the_watchdog_is_fed_at_half_the_time_it_asks_for_if_it_asks_this_process(
            String microseconds, String process, long millis) {
        assertThat(SystemdNotices.feedMillis(Map.of("WATCHDOG_USEC", microseconds, "WATCHDOG_PID", process), PID)
                        .orElse(-1))
                .isEqualTo(millis);
    }
}
