package org.ebbwatch.sim.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.net.InetAddress;
import java.net.Socket;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class PortsTest {
    private static final int WAIT_MILLIS = 2_000;

    private static byte[] everyByteValue() {
        byte[] all = new byte[1024];
        for (int i = 0; i < all.length; i++) {
            all[i] = (byte) (i < 256 ? i : 255 - i * 3);
        }
        return all;
    }

    private static byte[] readFully(SimPort port, int length) throws IOException {
        byte[] got = new byte[length];
        byte[] piece = new byte[100];
        int at = 0;
        while (at < length) {
            int count = port.read(piece, WAIT_MILLIS);
            assertThat(count).as("bytes after %s", at).isPositive();
            System.arraycopy(piece, 0, got, at, count);
            at += count;
        }
        return got;
    }

    @Nested
    class A_pseudo_terminal {
        @Test
        void carries_every_byte_value_both_ways_and_echoes_nothing() throws IOException {
            byte[] all = everyByteValue();
            try (PtyPort port = PtyPort.open();
                    RandomAccessFile host = new RandomAccessFile(port.address(), "rw")) {
                assertThat(port.write(all, 0, all.length)).isEqualTo(all.length);
                byte[] heard = new byte[all.length];
                host.readFully(heard);
                assertThat(heard).isEqualTo(all);

                host.write(all);
                assertThat(readFully(port, all.length)).isEqualTo(all);
                assertThat(port.read(heard, 0)).isZero();
            }
        }

        @Test
        void outlives_its_host() throws IOException {
            byte[] buffer = new byte[10];
            try (PtyPort port = PtyPort.open()) {
                try (RandomAccessFile host = new RandomAccessFile(port.address(), "rw")) {
                    host.write(1);
                    assertThat(port.read(buffer, WAIT_MILLIS)).isEqualTo(1);
                }
                assertThat(port.read(buffer, 1)).isZero();
                try (RandomAccessFile host = new RandomAccessFile(port.address(), "rw")) {
                    host.write(2);
                    assertThat(port.read(buffer, WAIT_MILLIS)).isEqualTo(1);
                    assertThat(buffer[0]).isEqualTo((byte) 2);
                }
            }
        }

        @Test
        void never_blocks_when_nobody_reads() throws IOException {
            byte[] much = new byte[1 << 20];
            try (PtyPort port = PtyPort.open()) {
                int taken = port.write(much, 0, much.length);

                assertThat(taken).isBetween(1, much.length - 1);
                assertThat(port.write(much, 0, 1_000)).isZero();
            }
        }

        @Test
        void refuses_to_work_once_closed() throws IOException {
            PtyPort port = PtyPort.open();
            port.close();
            port.close();

            assertThatThrownBy(() -> port.read(new byte[1], 0)).isInstanceOf(IOException.class);
        }
    }

    @Nested
    class A_TCP_port {
        @Test
        void carries_every_byte_value_both_ways() throws IOException {
            byte[] all = everyByteValue();
            try (TcpPort port = TcpPort.listen(0);
                    Socket host = new Socket(InetAddress.getLoopbackAddress(), port.port())) {
                OutputStream toBoard = host.getOutputStream();
                toBoard.write(all);
                assertThat(readFully(port, all.length)).isEqualTo(all);

                assertThat(port.write(all, 0, all.length)).isEqualTo(all.length);
                InputStream fromBoard = host.getInputStream();
                assertThat(fromBoard.readNBytes(all.length)).isEqualTo(all);
            }
        }

        @Test
        void loses_what_is_written_while_nobody_is_there() throws IOException {
            try (TcpPort port = TcpPort.listen(0)) {
                assertThat(port.write(new byte[100], 0, 100)).isEqualTo(100);
            }
        }

        @Test
        void gives_way_to_a_new_host() throws IOException {
            try (TcpPort port = TcpPort.listen(0);
                    Socket old = new Socket(InetAddress.getLoopbackAddress(), port.port())) {
                old.getOutputStream().write(1);
                assertThat(readFully(port, 1)).containsExactly(1);
                try (Socket fresh = new Socket(InetAddress.getLoopbackAddress(), port.port())) {
                    fresh.getOutputStream().write(2);
                    int count = 0;
                    byte[] got = new byte[4];
                    while (count == 0) {
                        count = port.read(got, WAIT_MILLIS);
                    }
                    assertThat(got[0]).isEqualTo((byte) 2);
                    assertThat(old.getInputStream().read()).isEqualTo(-1);
                }
            }
        }

        @Test
        void says_which_port_is_taken() throws IOException {
            try (TcpPort port = TcpPort.listen(0)) {
                assertThatThrownBy(() -> TcpPort.listen(port.port()))
                        .isInstanceOf(IOException.class)
                        .hasMessageStartingWith("port " + port.port() + " cannot be listened on");
            }
        }
    }
}
