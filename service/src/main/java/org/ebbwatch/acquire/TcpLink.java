package org.ebbwatch.acquire;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.util.concurrent.atomic.AtomicReference;

/** A board, or a serial port server, on the network. The name is looked up at every attempt. */
final class TcpLink implements Port {

    private static final int CONNECT_MILLIS = 2_000;
    private static final int READ_MILLIS = 100;

    private final String host;
    private final int portNumber;
    private final AtomicReference<Socket> open = new AtomicReference<>();

    TcpLink(String host, int portNumber) {
        this.host = host;
        this.portNumber = portNumber;
    }

    @Override
    public void open() throws PortUnavailable {
        Socket socket = new Socket();
        open.set(socket);
        try {
            socket.setTcpNoDelay(true);
            socket.setSoTimeout(READ_MILLIS);
            socket.connect(new InetSocketAddress(host, portNumber), CONNECT_MILLIS);
        } catch (IOException | UncheckedIOException e) {
            close();
            throw new PortUnavailable(
                    PortUnavailable.Reason.UNREACHABLE,
                    "Nothing answers at " + host + " port " + portNumber + " (" + e.getMessage()
                            + "). Check that the board or its port server has power and network, and the address in the rack"
                            + " file.");
        }
    }

    @Override
    public int read(byte[] into) throws IOException {
        try {
            return socket().getInputStream().read(into);
        } catch (SocketTimeoutException nothingCame) {
            return 0;
        }
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        socket().getOutputStream().write(bytes, offset, length);
    }

    @Override
    public void close() {
        Socket socket = open.getAndSet(null);
        if (socket != null) {
            try {
                socket.close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private Socket socket() throws IOException {
        Socket socket = open.get();
        if (socket == null) {
            throw new IOException("the connection is closed");
        }
        return socket;
    }
}
