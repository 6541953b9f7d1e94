package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
class SerialPortLinkTest extends PortContract {

    @TempDir
    Path directory;

    private PseudoTerminal terminal;

    @Override
    Port nearEnd() throws IOException {
        terminal = new PseudoTerminal();
        return new SerialPortLink(terminal.path(), 115_200);
    }

    @Override
    Port nowhere() {
        return new SerialPortLink("/dev/serial/by-id/none-such", 115_200);
    }

    @Override
    void farWrite(byte[] bytes) throws IOException {
        terminal.write(bytes);
    }

    @Override
    int farRead(byte[] into) throws IOException {
        return terminal.read(into);
    }

    @Override
    void farHangUp() throws IOException {
        terminal.hangUp();
    }

    private static PortUnavailable refusal(String path) {
        return catchThrowableOfType(PortUnavailable.class, () -> new SerialPortLink(path, 115_200).open());
    }

    @Test
    void a_missing_port_is_told_from_one_in_use() {
        assertThat(refusal("/dev/none-such").reason()).isEqualTo(PortUnavailable.Reason.MISSING);
        PortUnavailable inUse = refusal(terminal.path());
        assertThat(inUse.reason()).isEqualTo(PortUnavailable.Reason.IN_USE);
        assertThat(inUse).hasMessageContaining(terminal.path()).hasMessageContaining("in use");
    }

    @Test
    void a_file_that_is_no_serial_port_is_not_opened() throws IOException {
        Path file = Files.createFile(directory.resolve("notes.txt"));
        assertThat(refusal(file.toString()).reason()).isEqualTo(PortUnavailable.Reason.OTHER);
    }

    @Test
    void a_name_that_is_no_path_is_a_missing_port() {
        assertThat(refusal("COM99").reason()).isEqualTo(PortUnavailable.Reason.MISSING);
    }

    @Test
    void a_link_is_followed_anew_by_every_attempt() throws IOException {
        try (PseudoTerminal first = new PseudoTerminal();
                PseudoTerminal second = new PseudoTerminal()) {
            Path link = Files.createSymbolicLink(directory.resolve("board"), Path.of(first.path()));
            Port before = new SerialPortLink(link.toString(), 115_200);
            before.open();
            before.close();
            Files.delete(link);
            Files.createSymbolicLink(link, Path.of(second.path()));
            Port after = new SerialPortLink(link.toString(), 115_200);
            after.open();
            after.write(new byte[] {42}, 0, 1);
            byte[] arrived = new byte[1];
            assertThat(second.read(arrived)).isEqualTo(1);
            assertThat(arrived[0]).isEqualTo((byte) 42);
            after.close();
        }
    }
}
