package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** What the serial library does where {@link SerialPortLink} relies on it. A new version that differs shows itself here. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
class SerialLibraryTest {

    private static SerialPort open(PseudoTerminal terminal) {
        SerialPort port = SerialPort.getCommPort(terminal.path());
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 100, 0);
        assertThat(port.openPort()).isTrue();
        return port;
    }

    @Test
    void after_a_hang_up_reads_are_minus_one_while_the_port_still_says_it_is_open() throws IOException {
        try (PseudoTerminal terminal = new PseudoTerminal()) {
            SerialPort port = open(terminal);
            terminal.hangUp();
            await().until(() -> port.readBytes(new byte[8], 8) == -1);
            assertThat(port.readBytes(new byte[8], 8)).isEqualTo(-1);
            assertThat(port.isOpen()).isTrue();
            assertThat(port.closePort()).isTrue();
        }
    }

    @Test
    void after_a_hang_up_writes_take_nothing_and_do_not_say_that_they_failed() throws IOException {
        try (PseudoTerminal terminal = new PseudoTerminal()) {
            SerialPort port = open(terminal);
            terminal.hangUp();
            await().until(() -> port.writeBytes(new byte[8], 8) == 0);
            port.closePort();
        }
    }

    @Test
    void a_port_open_in_this_process_is_told_as_missing() throws IOException {
        try (PseudoTerminal terminal = new PseudoTerminal()) {
            SerialPort port = open(terminal);
            SerialPort again = SerialPort.getCommPort(terminal.path());
            assertThat(again.openPort()).isFalse();
            assertThat(again.getLastErrorCode()).isEqualTo(2);
            port.closePort();
        }
    }

    @Test
    void bytes_sent_before_the_port_was_opened_are_read_after() throws IOException {
        try (PseudoTerminal terminal = new PseudoTerminal()) {
            terminal.write(new byte[] {1, 2, 3});
            SerialPort port = open(terminal);
            byte[] stale = new byte[8];
            await().until(() -> port.readBytes(stale, 8) == 3);
            assertThat(stale).startsWith(1, 2, 3);
            port.closePort();
        }
    }
}
