package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.ebbwatch.acquire.Port;
import org.junit.jupiter.api.Test;

/** A port on which every look takes 100 ms of a clock that only looks move. */
class ExchangeTest {
    private static final long LOOK_NANOS = 100_000_000;
    private static final Request ONE_REGISTER = Request.read(new Span(new Spot(1, Table.HOLDING_REGISTERS, 0), 1));
    private static final String ANSWERED = "01 03 02 0E 80 BD 84";

    private final ScriptedPort port = new ScriptedPort();
    private long nanos;

    @Test
    void a_request_without_an_answer_ends_at_its_deadline() throws IOException {
        Exchange exchange = exchange(new TcpWire());
        long begun = nanos;
        assertThat(exchange.ask(ONE_REGISTER)).isEqualTo(new Answer.Silent());
        assertThat(nanos - begun).isEqualTo(3 * LOOK_NANOS);
    }

    @Test
    void on_a_serial_line_what_comes_late_is_thrown_away_before_the_next_request() throws IOException {
        Exchange exchange = exchange(new RtuWire());
        for (int look = 0; look < 3 + 3; look++) {
            port.nothing();
        }
        assertThat(exchange.ask(ONE_REGISTER)).isEqualTo(new Answer.Silent());
        port.says(ANSWERED);
        for (int look = 0; look < 3; look++) {
            port.nothing();
        }
        exchange.begin(ONE_REGISTER);
        assertThat(exchange.step()).as("the late answer").isEmpty();
        assertThat(port.written).hasSize(1);
        Optional<Answer> answer = Optional.empty();
        while (answer.isEmpty()) {
            if (port.written.size() == 2 && port.script.isEmpty()) {
                port.says(ANSWERED);
            }
            answer = exchange.step();
        }
        assertThat(answer.get()).isInstanceOf(Answer.Data.class);
    }

    @Test
    void a_line_that_never_falls_quiet_is_not_spoken_on() throws IOException {
        Exchange exchange = exchange(new RtuWire());
        exchange.begin(ONE_REGISTER);
        for (int look = 0; look < 50; look++) {
            port.says("FF");
            assertThat(exchange.step()).isEmpty();
        }
        assertThat(port.written).isEmpty();
    }

    @Test
    void a_lost_port_and_a_partner_that_speaks_something_else_end_the_connection() throws IOException {
        Exchange web = exchange(new TcpWire());
        port.says("48 54 54 50 2F 31 2E 31 20");
        assertThatThrownBy(() -> web.ask(ONE_REGISTER)).hasMessageContaining("no Modbus");
        Exchange lost = exchange(new TcpWire());
        port.script.add(Optional.empty());
        assertThatThrownBy(() -> lost.ask(ONE_REGISTER)).hasMessageContaining("unplugged");
    }

    private Exchange exchange(Wire wire) throws IOException {
        Exchange exchange = new Exchange(port, wire, 300, 0, () -> nanos);
        exchange.open();
        return exchange;
    }

    /** Says what it was told to; nothing once that is over. */
    private final class ScriptedPort implements Port {
        private final Queue<Optional<byte[]>> script = new ArrayDeque<>();
        private final List<byte[]> written = new ArrayList<>();

        void says(String hex) {
            script.add(Optional.of(HexFormat.ofDelimiter(" ").parseHex(hex)));
        }

        void nothing() {
            script.add(Optional.of(new byte[0]));
        }

        @Override
        public int read(byte[] into) {
            nanos += LOOK_NANOS;
            Optional<byte[]> next = script.isEmpty() ? Optional.of(new byte[0]) : script.remove();
            if (next.isEmpty()) {
                return -1;
            }
            System.arraycopy(next.get(), 0, into, 0, next.get().length);
            return next.get().length;
        }

        @Override
        public void open() {
            // is open
        }

        @Override
        public void write(byte[] bytes, int offset, int length) {
            written.add(bytes);
        }

        @Override
        public void close() {
            // nothing to let go of
        }
    }
}
