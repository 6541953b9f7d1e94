package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.acquire.PortAddress.Serial;
import org.ebbwatch.acquire.PortAddress.Tcp;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PortAddressTest {

    @Test
    void a_path_is_a_serial_port() {
        assertThat(PortAddress.parse("/dev/ttyUSB0", 9_600)).contains(new Serial("/dev/ttyUSB0", 9_600));
        assertThat(PortAddress.parse("COM3", 9_600)).contains(new Serial("COM3", 9_600));
    }

    @Test
    void a_host_and_a_port_number_are_a_network_address() {
        assertThat(PortAddress.parse("tcp:bench.example:4000", 9_600)).contains(new Tcp("bench.example", 4_000));
        assertThat(PortAddress.parse("tcp:[::1]:4000", 9_600)).contains(new Tcp("::1", 4_000));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tcp:4000",
                "tcp:host:",
                "tcp:host:0",
                "tcp:host:65536",
                "tcp:host:99999",
                "tcp::4000",
                "tcp:a:b:1",
                ""
            })
    void anything_else_is_neither(String text) {
        assertThat(PortAddress.parse(text, 9_600)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"tcp:bench.example:4000", "tcp:[::1]:4000", "/dev/ttyUSB0"})
    void it_is_written_as_it_is_read(String text) {
        assertThat(PortAddress.parse(text, 9_600).orElseThrow()).hasToString(text);
    }
}
