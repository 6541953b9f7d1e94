package org.ebbwatch.acquire;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.concurrent.CompletableFuture;

class TcpLinkTest extends PortContract {

    private ServerSocket server;
    private CompletableFuture<Socket> accepted;

    @Override
    Port nearEnd() throws IOException {
        server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        accepted = CompletableFuture.supplyAsync(() -> {
            try {
                return server.accept();
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        });
        return new TcpLink(server.getInetAddress().getHostAddress(), server.getLocalPort());
    }

    @Override
    Port nowhere() throws IOException {
        try (ServerSocket gone = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return new TcpLink(gone.getInetAddress().getHostAddress(), gone.getLocalPort());
        }
    }

    @Override
    void farWrite(byte[] bytes) throws IOException {
        accepted.join().getOutputStream().write(bytes);
    }

    @Override
    int farRead(byte[] into) throws IOException {
        return accepted.join().getInputStream().read(into);
    }

    @Override
    void farHangUp() throws IOException {
        accepted.join().close();
        server.close();
    }
}
