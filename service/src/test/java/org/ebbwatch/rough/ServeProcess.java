package org.ebbwatch.rough;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.ebbwatch.access.TokenFile;

/** The service as people start it, {@code ebbwatch serve}, in a process of its own that can be killed and started again. */
final class ServeProcess implements AutoCloseable {
    private static final int LAST_CHARACTERS = 600;

    private final Path folder;
    private final int httpPort;
    private final String token;
    private final List<String> javaOptions;
    private final Map<String, String> environment;
    private Process process;

    /**
     * Makes the rack file; starts nothing.
     *
     * @param rest of the rack file below {@code storage} and {@code http}
     */
    ServeProcess(Path folder, Path records, String rest, List<String> javaOptions, Map<String, String> environment)
            throws IOException {
        this.folder = folder;
        this.javaOptions = javaOptions;
        this.environment = environment;
        this.httpPort = freePort();
        Files.createDirectories(records);
        token = new TokenFile(records).renew();
        Files.writeString(rackFile(), "storage: " + records + "\nhttp:\n  port: " + httpPort + "\n" + rest);
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private Path rackFile() {
        return folder.resolve("rack.yaml");
    }

    /** What it wrote on its terminal in this run and those before. */
    Path log() {
        return folder.resolve("serve.log");
    }

    /** The last it said. */
    String lastSaid() throws IOException {
        String all = Files.readString(log());
        return all.substring(Math.max(0, all.length() - LAST_CHARACTERS));
    }

    String url() {
        return "http://127.0.0.1:" + httpPort + "/api/v1";
    }

    String token() {
        return token;
    }

    void start() throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(javaOptions);
        command.addAll(List.of(
                "-cp",
                System.getProperty("java.class.path"),
                "org.ebbwatch.cli.Ebbwatch",
                "serve",
                rackFile().toString()));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log().toFile()));
        builder.environment().putAll(environment);
        process = builder.start();
    }

    boolean isAlive() {
        return process != null && process.isAlive();
    }

    long pid() {
        return process.pid();
    }

    /** SIGKILL: nothing is written, nothing is closed. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** SIGTERM, as systemd stops it; its exit code. */
    int stop() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            kill();
            throw new IllegalStateException("the service did not stop within a minute");
        }
        return process.exitValue();
    }

    @Override
    public void close() {
        if (process != null) {
            process.destroyForcibly();
        }
    }
}
