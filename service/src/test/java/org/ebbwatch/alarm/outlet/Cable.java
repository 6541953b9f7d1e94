package org.ebbwatch.alarm.outlet;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import javax.net.ssl.SSLContext;

/** A connection to a server that can be pulled out and put in again. */
public final class Cable implements AutoCloseable {
    private final ServerSocket near;
    private final List<Socket> ends = Collections.synchronizedList(new ArrayList<>());
    private final String host;
    private final int port;
    private volatile boolean pulled;

    /** A cable to that server. */
    public Cable(String host, int port) throws IOException {
        this(host, port, new ServerSocket(0, 50, InetAddress.getLoopbackAddress()));
    }

    /** A cable whose near end speaks TLS, while the server at the far end does not. */
    public static Cable encrypted(String host, int port, SSLContext shown) throws IOException {
        return new Cable(
                host, port, shown.getServerSocketFactory().createServerSocket(0, 50, InetAddress.getLoopbackAddress()));
    }

    private Cable(String host, int port, ServerSocket near) {
        this.near = near;
        this.host = host;
        this.port = port;
        onThread(this::listen);
    }

    /** Of its near end, on this machine. */
    public int port() {
        return near.getLocalPort();
    }

    /** Pulls it out: what was open breaks, and nothing can be opened. */
    public void pull() throws IOException {
        pulled = true;
        synchronized (ends) {
            for (Socket end : ends) {
                end.close();
            }
            ends.clear();
        }
    }

    /** Puts it in again. */
    public void putIn() {
        pulled = false;
    }

    private void listen() throws IOException {
        while (true) {
            Socket client = near.accept();
            if (pulled) {
                client.close();
                continue;
            }
            var server = new Socket(host, port);
            ends.addAll(List.of(client, server));
            onThread(() -> hand(client, server));
            onThread(() -> hand(server, client));
        }
    }

    private static void hand(Socket from, Socket to) throws IOException {
        try (from;
                to) {
            from.getInputStream().transferTo(to.getOutputStream());
        }
    }

    private interface Work {
        void run() throws IOException;
    }

    private static void onThread(Work work) {
        var thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (IOException over) {
                        // The connection is.
                    }
                },
                "cable");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        near.close();
        pull();
    }
}
