package org.ebbwatch.alarm.mail;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;

/**
 * Speaks the clear beginning of a mail conversation (RFC 3207) before a mail server that knows no STARTTLS, and hands the rest on to
 * it once it is encrypted. Keeps what was said in the clear.
 */
final class StartTlsFront implements AutoCloseable {
    private final List<String> inTheClear = Collections.synchronizedList(new ArrayList<>());
    private final ServerSocket listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final Optional<SSLContext> tls;
    private final int behind;

    /**
     * A front.
     *
     * @param tls by which it encrypts; empty: it does not offer to
     * @param behind port of the mail server
     */
    StartTlsFront(Optional<SSLContext> tls, int behind) throws IOException {
        this.tls = tls;
        this.behind = behind;
        onThread(this::listen);
    }

    int port() {
        return listening.getLocalPort();
    }

    List<String> inTheClear() {
        return inTheClear;
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
                "starttls front");
        thread.setDaemon(true);
        thread.start();
    }

    private void listen() throws IOException {
        while (true) {
            Socket client = listening.accept();
            onThread(() -> serve(client));
        }
    }

    private void serve(Socket client) throws IOException {
        try (client) {
            say(client, "220 front ready");
            while (true) {
                String line = line(client.getInputStream());
                inTheClear.add(line);
                String verb = line.replaceFirst(" .*", "").toUpperCase(Locale.ROOT);
                if (verb.equals("EHLO")) {
                    say(client, tls.isPresent() ? "250-front\r\n250 STARTTLS" : "250 front");
                } else if (verb.equals("STARTTLS") && tls.isPresent()) {
                    say(client, "220 go");
                    handOn(client);
                    return;
                } else if (verb.equals("QUIT")) {
                    say(client, "221 bye");
                    return;
                } else {
                    say(client, "502 no");
                }
            }
        }
    }

    private void handOn(Socket client) throws IOException {
        SSLSocket secret =
                (SSLSocket) tls.orElseThrow().getSocketFactory().createSocket(client, null, client.getPort(), true);
        secret.setUseClientMode(false);
        try (secret;
                Socket server = new Socket(InetAddress.getLoopbackAddress(), behind)) {
            line(server.getInputStream());
            onThread(() -> server.getInputStream().transferTo(secret.getOutputStream()));
            secret.getInputStream().transferTo(server.getOutputStream());
        }
    }

    private static void say(Socket client, String text) throws IOException {
        OutputStream out = client.getOutputStream();
        out.write((text + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    /** Byte by byte, so that nothing of what follows in secret is taken. */
    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int letter = in.read(); letter != '\n'; letter = in.read()) {
            if (letter < 0) {
                throw new IOException("over");
            }
            line.append((char) letter);
        }
        return line.toString().strip();
    }

    @Override
    public void close() throws IOException {
        listening.close();
    }
}
