package org.ebbwatch.cboard;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The board in C as a process of its own behind a pseudo-terminal: rig-protocol's {@code example_host.c}, built with gcc. */
final class CBoard implements AutoCloseable {
    private static final Path SOURCES =
            Path.of(System.getProperty("basedir", "")).toAbsolutePath().resolve("../rig-protocol/src/main/c");

    private final Process process;
    private final PrintStream in;
    private final BufferedReader out;

    private CBoard(Path program, Path link) throws IOException {
        process = new ProcessBuilder(program.toString(), link.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        in = new PrintStream(process.getOutputStream(), false, UTF_8);
        out = new BufferedReader(new InputStreamReader(process.getInputStream(), UTF_8));
        out.readLine();
    }

    /**
     * A board that has just been switched on.
     *
     * @param link where its terminal can be opened
     */
    static CBoard behind(Path link, Path folder) throws IOException, InterruptedException {
        Path program = folder.resolve("example_host");
        List<String> command = List.of(
                "gcc",
                "-std=c99",
                "-Wall",
                "-Wextra",
                "-Werror",
                "-pedantic",
                SOURCES.resolve("rig_frame.c").toString(),
                SOURCES.resolve("rig_board.c").toString(),
                SOURCES.resolve("example_host.c").toString(),
                "-o",
                program.toString());
        Process gcc = null;
        try {
            gcc = new ProcessBuilder(command).inheritIO().start();
        } catch (IOException e) {
            assumeTrue(false, "no gcc on this machine: " + e.getMessage());
        }
        if (gcc.waitFor() != 0 || !Files.isExecutable(program)) {
            throw new AssertionError("gcc failed: " + String.join(" ", command));
        }
        return new CBoard(program, link);
    }

    /** Something happens to it, one of the words of example_host.c; says which loads are on then. */
    String meets(String mishap) {
        in.println(mishap);
        in.flush();
        try {
            String said = out.readLine();
            if (said == null || !said.startsWith("ok ")) {
                throw new IllegalStateException(mishap + ": " + said);
            }
            return said.substring("ok ".length());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
