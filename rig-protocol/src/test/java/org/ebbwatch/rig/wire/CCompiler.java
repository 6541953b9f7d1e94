package org.ebbwatch.rig.wire;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.lifecycle.LifecycleContext;
import net.jqwik.api.lifecycle.SkipExecutionHook;

/** Builds programs from the C reference with gcc; where there is none, the test that wants one is skipped and says so. */
final class CCompiler {
    private static final Path MODULE =
            Path.of(System.getProperty("basedir", "")).toAbsolutePath();
    private static final Path MAIN = MODULE.resolve("src/main/c");
    private static final Path TEST = MODULE.resolve("src/test/c");
    private static final List<String> STRICT =
            List.of("gcc", "-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-O1", "-g", "-I", MAIN.toString());

    private static final Set<Path> BUILT = new HashSet<>();

    private CCompiler() {}

    /** Skips a property, with the reason, where there is no gcc; its tries cannot do so themselves. */
    static final class Needed implements SkipExecutionHook {
        @Override
        public SkipResult shouldBeSkipped(LifecycleContext context) {
            try {
                new ProcessBuilder("gcc", "--version")
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
                return SkipResult.doNotSkip();
            } catch (IOException e) {
                return SkipResult.skip("no gcc on this machine: " + e.getMessage());
            }
        }
    }

    /** The reference together with one program of {@code src/test/c}. */
    static Path testProgram(String name, String... options) throws IOException, InterruptedException {
        return program(name, TEST.resolve(name + ".c"), options);
    }

    private static Path program(String name, Path source, String... options) throws IOException, InterruptedException {
        Path program = Files.createDirectories(MODULE.resolve("target/c")).resolve(name);
        if (!BUILT.contains(program)) {
            gcc(options, MAIN.resolve("rig_frame.c"), MAIN.resolve("rig_board.c"), source, "-o", program);
            BUILT.add(program);
        }
        return program;
    }

    /** Compiles one file of the reference alone, for which a chip's functions may be missing. */
    static void compileOnly(String file) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(MODULE.resolve("target/c"));
        gcc(new String[] {"-c"}, MAIN.resolve(file), "-o", folder.resolve(file + ".o"));
    }

    private static void gcc(String[] options, Object... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(STRICT);
        command.addAll(List.of(options));
        Stream.of(arguments).map(Object::toString).forEach(command::add);
        Process process;
        try {
            process = new ProcessBuilder(command).redirectErrorStream(true).start();
        } catch (IOException e) {
            assumeTrue(false, "no gcc on this machine: " + e.getMessage());
            return;
        }
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        if (process.waitFor() != 0) {
            throw new AssertionError(String.join(" ", command) + "\n" + said);
        }
    }
}
