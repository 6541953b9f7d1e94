package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.time.EventClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class BoardAgentTest {

    @TempDir
    Path directory;

    private final RecordingListener listener = new RecordingListener();
    private final RackLock rack = new RackLock();
    private BoardAgent agent;

    private void start(Supplier<Port> ports) {
        start(ports, listener);
    }

    private void start(Supplier<Port> ports, BoardListener hears) {
        agent = new BoardAgent(
                "left",
                Optional.of("EB-1"),
                new SerialNumbers(),
                ports,
                EventClock.fresh(),
                hears,
                rack,
                new SystemHostClock());
        agent.start();
    }

    @AfterEach
    void close() {
        agent.close();
    }

    private static DummyBoard.Wire wire(PseudoTerminal terminal) {
        return new DummyBoard.Wire() {
            @Override
            public int read(byte[] into) throws IOException {
                return terminal.read(into);
            }

            @Override
            public void write(byte[] bytes) throws IOException {
                terminal.write(bytes);
            }
        };
    }

    private static DummyBoard.Wire wire(Socket socket) {
        return new DummyBoard.Wire() {
            @Override
            public int read(byte[] into) throws IOException {
                return socket.getInputStream().read(into);
            }

            @Override
            public void write(byte[] bytes) throws IOException {
                socket.getOutputStream().write(bytes);
            }
        };
    }

    private static Identity board(long boot) {
        return Frames.identity("EB-1", boot, 1_000, 4);
    }

    private void awaitScan(long boot, long scan) {
        await().until(() -> listener.heard.stream()
                .anyMatch(heard -> heard instanceof Happening.Scan s && s.bootNumber() == boot && s.scan() == scan));
    }

    private void awaitLink(LinkState state) {
        await().until(() -> listener.heard.contains(new Happening.Link(state)));
    }

    @Test
    @EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
    void a_board_unplugged_and_plugged_in_again_behind_the_same_link_goes_on() throws IOException {
        Path link = directory.resolve("board");
        try (PseudoTerminal first = new PseudoTerminal()) {
            Files.createSymbolicLink(link, Path.of(first.path()));
            new DummyBoard(wire(first), board(7), 5).start();
            start(() -> new SerialPortLink(link.toString(), 115_200));
            awaitScan(7, 5);
            Files.delete(link);
        }
        awaitLink(LinkState.LOST);
        await().until(() -> listener.lastDetail().contains("does not exist"));
        try (PseudoTerminal second = new PseudoTerminal()) {
            Files.createSymbolicLink(link, Path.of(second.path()));
            new DummyBoard(wire(second), board(8), 3).start();
            awaitScan(8, 3);
            assertThat(listener.heard).contains(new Happening.Rebooted(8));
            agent.close();
        }
    }

    @Test
    void a_board_on_the_network_is_connected_to_again() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            start(() -> new TcpLink(server.getInetAddress().getHostAddress(), server.getLocalPort()));
            try (Socket first = server.accept()) {
                new DummyBoard(wire(first), board(7), 5).start();
                awaitScan(7, 5);
            }
            try (Socket second = server.accept()) {
                DummyBoard ranOn = new DummyBoard(wire(second), board(7), 9);
                ranOn.scan.set(7);
                ranOn.start();
                awaitScan(7, 9);
                agent.close();
            }
        }
        List<Happening> told = listener.news();
        assertThat(told).filteredOn(Happening.GapBefore.class::isInstance).hasSize(1);
        assertThat(told)
                .filteredOn(Happening.Link.class::isInstance)
                .containsExactly(
                        new Happening.Link(LinkState.WAITING),
                        new Happening.Link(LinkState.CONNECTED),
                        new Happening.Link(LinkState.LOST),
                        new Happening.Link(LinkState.WAITING),
                        new Happening.Link(LinkState.CONNECTED),
                        new Happening.Link(LinkState.LOST));
    }

    @Test
    void a_request_made_under_the_racks_lock_is_answered() throws IOException {
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            start(() -> new TcpLink(server.getInetAddress().getHostAddress(), server.getLocalPort()));
            try (Socket socket = server.accept()) {
                new DummyBoard(wire(socket), board(7), 2).start();
                awaitLink(LinkState.CONNECTED);
                OptionalInt sequence = rack.call(() -> agent.session().setLoad(2, true));
                await().until(() ->
                        listener.heard.contains(new Happening.Answered(sequence.orElseThrow(), new Answer.Done())));
                agent.close();
            }
        }
    }

    @Test
    void a_port_that_takes_no_bytes_is_closed_and_opened_again() {
        AtomicInteger opened = new AtomicInteger();
        start(() -> new StuckPort(opened));
        await().atMost(Duration.ofSeconds(20)).until(() -> opened.get() >= 2);
        assertThat(listener.details).anyMatch(detail -> detail.contains("taken no bytes"));
    }

    @Test
    void a_silence_is_found_while_opening_the_port_hangs() {
        CountDownLatch never = new CountDownLatch(1);
        start(() -> new StuckPort(new AtomicInteger()) {
            @Override
            public void open() {
                awaitQuietly(never);
            }
        });
        await().atMost(Duration.ofSeconds(20)).until(() -> listener.heard.contains(new Happening.Silent(0)));
        never.countDown();
    }

    @Test
    void a_fault_of_the_listener_closes_the_port_and_the_board_is_connected_to_again() throws IOException {
        AtomicInteger faults = new AtomicInteger();
        RecordingListener faulty = new RecordingListener() {
            @Override
            public void identified(String name, Identity identity) {
                if (faults.getAndIncrement() == 0) {
                    throw new IllegalStateException("a fault made for this test");
                }
                super.identified(name, identity);
            }
        };
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            start(() -> new TcpLink(server.getInetAddress().getHostAddress(), server.getLocalPort()), faulty);
            try (Socket first = server.accept()) {
                new DummyBoard(wire(first), board(7), 0).start();
                try (Socket second = server.accept()) {
                    new DummyBoard(wire(second), board(7), 0).start();
                    await().until(() -> faulty.heard.contains(new Happening.Identified("EB-1")));
                    agent.close();
                }
            }
        }
        assertThat(faulty.details).anyMatch(detail -> detail.contains("fault in itself"));
    }

    @Test
    void closing_ends_both_threads() {
        start(() -> new StuckPort(new AtomicInteger()));
        awaitLink(LinkState.WAITING);
        agent.close();
        assertThat(Thread.getAllStackTraces().keySet())
                .noneMatch(thread -> thread.getName().startsWith("board left"));
    }

    private static void awaitQuietly(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A port on which nothing comes and no write ends before it is closed. */
    private static class StuckPort implements Port {
        private final AtomicInteger opened;
        private final CountDownLatch closed = new CountDownLatch(1);

        StuckPort(AtomicInteger opened) {
            this.opened = opened;
        }

        @Override
        public void open() {
            opened.incrementAndGet();
        }

        @Override
        public int read(byte[] into) throws IOException {
            try {
                return closed.await(100, java.util.concurrent.TimeUnit.MILLISECONDS) ? -1 : 0;
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            awaitQuietly(closed);
            throw new IOException("closed");
        }

        @Override
        public void close() {
            closed.countDown();
        }
    }
}
