package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every port promises; run against each kind. */
abstract class PortContract {

    private Port port;

    /** A closed port whose other end is {@link #farWrite} and its fellows. */
    abstract Port nearEnd() throws IOException;

    /** A port that nobody is behind. */
    abstract Port nowhere() throws IOException;

    abstract void farWrite(byte[] bytes) throws IOException;

    abstract int farRead(byte[] into) throws IOException;

    abstract void farHangUp() throws IOException;

    @BeforeEach
    void open() throws IOException {
        port = nearEnd();
        port.open();
    }

    @AfterEach
    void closeAll() throws IOException {
        port.close();
        farHangUp();
    }

    private static byte[] everyByte() {
        byte[] bytes = new byte[256];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) i;
        }
        return bytes;
    }

    @Test
    void every_byte_arrives_as_it_was_sent() throws IOException {
        farWrite(everyByte());
        ByteArrayOutputStream arrived = new ByteArrayOutputStream();
        byte[] some = new byte[64];
        await().until(() -> {
            int count = port.read(some);
            arrived.write(some, 0, count);
            return arrived.size() >= 256;
        });
        assertThat(arrived.toByteArray()).isEqualTo(everyByte());
    }

    @Test
    void every_byte_leaves_as_it_was_written() throws IOException {
        byte[] framed = new byte[300];
        System.arraycopy(everyByte(), 0, framed, 22, 256);
        port.write(framed, 22, 256);
        ByteArrayOutputStream arrived = new ByteArrayOutputStream();
        byte[] some = new byte[64];
        while (arrived.size() < 256) {
            arrived.write(some, 0, farRead(some));
        }
        assertThat(arrived.toByteArray()).isEqualTo(everyByte());
    }

    @Test
    void a_read_returns_without_bytes_while_none_come() throws IOException {
        assertThat(port.read(new byte[8])).isZero();
    }

    @Test
    void a_hang_up_is_a_negative_read_or_a_fault() throws IOException {
        farHangUp();
        await().until(() -> {
            try {
                return port.read(new byte[8]) < 0;
            } catch (IOException lost) {
                return true;
            }
        });
    }

    @Test
    void closing_frees_a_write_the_other_end_does_not_take() throws IOException {
        AtomicLong written = new AtomicLong();
        CompletableFuture<Throwable> ended = CompletableFuture.supplyAsync(() -> {
            byte[] block = new byte[65_536];
            try {
                while (true) {
                    port.write(block, 0, block.length);
                    written.incrementAndGet();
                }
            } catch (IOException e) {
                return e;
            }
        });
        long[] before = {-1};
        await().pollInterval(java.time.Duration.ofMillis(300)).until(() -> {
            boolean stands = written.get() == before[0];
            before[0] = written.get();
            return stands;
        });
        assertThat(ended).isNotDone();
        port.close();
        await().until(ended::isDone);
        assertThat(ended.join()).isInstanceOf(IOException.class);
    }

    @Test
    void closing_twice_is_closing_once_and_nothing_is_read_or_written_after() {
        port.close();
        port.close();
        assertThatThrownBy(() -> port.read(new byte[8])).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> port.write(new byte[8], 0, 8)).isInstanceOf(IOException.class);
    }

    @Test
    void a_port_with_nobody_behind_says_what_to_do() throws IOException {
        Port missing = nowhere();
        assertThatThrownBy(missing::open)
                .isInstanceOf(PortUnavailable.class)
                .hasMessageMatching("(?s).*(Plug the board in|Check that).*rack file.*");
    }
}
