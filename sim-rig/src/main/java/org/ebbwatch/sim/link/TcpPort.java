package org.ebbwatch.sim.link;

import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedSelectorException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;

/**
 * A listening TCP port on the loopback address, for one host at a time: a new host takes the place of the one before. Bytes
 * written while no host is there are gone, as on a wire.
 */
public final class TcpPort implements SimPort {
    private final ServerSocketChannel server;
    private final Selector selector;
    private final int port;
    private SocketChannel host;

    private TcpPort(ServerSocketChannel server, Selector selector) {
        this.server = server;
        this.selector = selector;
        port = server.socket().getLocalPort();
    }

    /**
     * Listens.
     *
     * @param port 0 for any free one
     */
    public static TcpPort listen(int port) throws IOException {
        ServerSocketChannel server = ServerSocketChannel.open();
        try {
            server.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
            server.configureBlocking(false);
            Selector selector = Selector.open();
            server.register(selector, SelectionKey.OP_ACCEPT);
            return new TcpPort(server, selector);
        } catch (BindException e) {
            server.close();
            throw new IOException("port " + port + " cannot be listened on: " + e.getMessage(), e);
        } catch (IOException | RuntimeException e) {
            server.close();
            throw e;
        }
    }

    /** The port it listens on. */
    public int port() {
        return port;
    }

    @Override
    public String address() {
        return "tcp:" + InetAddress.getLoopbackAddress().getHostAddress() + ":" + port;
    }

    @Override
    public int read(byte[] into, int waitMillis) throws IOException {
        await(waitMillis);
        acceptNewest();
        if (host == null) {
            return 0;
        }
        try {
            int count = host.read(ByteBuffer.wrap(into));
            if (count < 0) {
                dropHost();
            }
            return Math.max(0, count);
        } catch (IOException e) {
            dropHost();
            return 0;
        }
    }

    private void await(int waitMillis) throws IOException {
        try {
            if (waitMillis > 0) {
                selector.select(waitMillis);
            } else {
                selector.selectNow();
            }
            selector.selectedKeys().clear();
        } catch (ClosedSelectorException e) {
            throw new IOException(address() + " is closed", e);
        }
    }

    private void acceptNewest() throws IOException {
        SocketChannel next = server.accept();
        while (next != null) {
            dropHost();
            host = next;
            host.configureBlocking(false);
            host.setOption(StandardSocketOptions.TCP_NODELAY, true);
            host.register(selector, SelectionKey.OP_READ);
            next = server.accept();
        }
    }

    @Override
    public int write(byte[] from, int offset, int length) throws IOException {
        if (host == null) {
            return length;
        }
        try {
            return host.write(ByteBuffer.wrap(from, offset, length));
        } catch (IOException e) {
            dropHost();
            return length;
        }
    }

    private void dropHost() throws IOException {
        if (host != null) {
            host.close();
            host = null;
        }
    }

    @Override
    public void close() throws IOException {
        selector.close();
        server.close();
        dropHost();
    }
}
