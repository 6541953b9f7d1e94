package org.ebbwatch.rough;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;

/** A file system of a few megabytes of its own, ext4 in a file, which can be filled, can break, and can be mended. For root on Linux. */
final class SmallDisk implements AutoCloseable {
    private static final int CHUNK = 4096;

    private final Path image;
    private final Path folder;
    private final Path filler;

    private SmallDisk(Path image, Path folder) {
        this.image = image;
        this.folder = folder;
        this.filler = folder.resolve("filler");
    }

    /** Makes and mounts one below this folder. */
    static SmallDisk mount(Path below, int megabytes) throws IOException {
        Path image = below.resolve("disk.image");
        Path folder = Files.createDirectories(below.resolve("disk"));
        try (OutputStream out = Files.newOutputStream(image)) {
            for (int i = 0; i < megabytes; i++) {
                out.write(new byte[1 << 20]);
            }
        }
        run("mkfs.ext4", "-q", "-F", "-m", "0", image.toString());
        run("mount", "-o", "loop", image.toString(), folder.toString());
        return new SmallDisk(image, folder);
    }

    /** Why none can be made here; empty where it can. */
    static Optional<String> obstacle() {
        try {
            Path below = Files.createTempDirectory("ebbwatch-disk");
            try (SmallDisk disk = mount(below, 4)) {
                Files.createFile(disk.folder().resolve("tried"));
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("no file system can be mounted here: " + e.getMessage());
        }
    }

    Path folder() {
        return folder;
    }

    /** Leaves not a byte. */
    void fill() throws IOException {
        for (int bytes : List.of(CHUNK, 1)) {
            try (OutputStream out =
                    Files.newOutputStream(filler, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
                while (true) {
                    out.write(new byte[bytes]);
                }
            } catch (IOException full) {
                // So it is wanted.
            }
        }
    }

    void makeRoom() throws IOException {
        Files.deleteIfExists(filler);
    }

    /** From now on it can only be read, as the kernel leaves a disk on which writing failed. */
    void breakDown() throws IOException {
        run("mount", "-o", "remount,abort", folder.toString());
    }

    /** Takes it away, checks it and brings it back while whoever uses it still runs. */
    void mend() throws IOException {
        run("umount", "-l", folder.toString());
        Path copy = image.resolveSibling("mended.image");
        Files.copy(image, copy, StandardCopyOption.REPLACE_EXISTING);
        run("sh", "-c", "e2fsck -p -f " + copy + " >/dev/null; test $? -lt 4");
        run("mount", "-o", "loop", copy.toString(), folder.toString());
    }

    @Override
    public void close() throws IOException {
        run("umount", "-l", folder.toString());
    }

    private static void run(String... command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.onExit().join().exitValue() != 0) {
            throw new IOException(String.join(" ", command) + ": " + said.strip());
        }
    }
}
