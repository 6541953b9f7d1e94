package org.ebbwatch.profile.modbus;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** {@code modbus_server.c}, built with gcc and libmodbus, as a process of its own. Skips the test where either is missing. */
final class LibmodbusUnit implements AutoCloseable {
    private static final Path SOURCE =
            Path.of(System.getProperty("basedir", "")).toAbsolutePath().resolve("src/test/c/modbus_server.c");

    private final Process process;

    private LibmodbusUnit(Process process) {
        this.process = process;
    }

    /** A unit on a serial line. */
    static LibmodbusUnit onLine(Path folder, String terminal, int unitId) throws IOException, InterruptedException {
        return started(folder, "rtu", terminal, unitId);
    }

    /** A unit behind a port of this machine. */
    static LibmodbusUnit onNetwork(Path folder, int port, int unitId) throws IOException, InterruptedException {
        return started(folder, "tcp", Integer.toString(port), unitId);
    }

    private static LibmodbusUnit started(Path folder, String kind, String where, int unitId)
            throws IOException, InterruptedException {
        Path program = folder.resolve("modbus_server");
        build(program);
        Process process = new ProcessBuilder(program.toString(), kind, where, Integer.toString(unitId))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        var out = new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8));
        if (!"ready".equals(out.readLine())) {
            process.destroyForcibly();
            throw new IOException("modbus_server did not start");
        }
        return new LibmodbusUnit(process);
    }

    private static void build(Path program) throws IOException, InterruptedException {
        assumeTrue(Files.exists(Path.of("/usr/include/modbus/modbus.h")), "no libmodbus on this machine");
        List<String> command = List.of(
                "gcc",
                "-std=gnu99",
                "-Wall",
                "-Wextra",
                "-Werror",
                "-pedantic",
                SOURCE.toString(),
                "-lmodbus",
                "-o",
                program.toString());
        Process gcc = null;
        try {
            gcc = new ProcessBuilder(command).inheritIO().start();
        } catch (IOException e) {
            assumeTrue(false, "no gcc on this machine: " + e.getMessage());
        }
        if (gcc.waitFor() != 0) {
            throw new AssertionError("gcc failed: " + String.join(" ", command));
        }
    }

    /** Whether it has not crashed. */
    boolean isRunning() {
        return process.isAlive();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
