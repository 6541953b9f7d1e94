package org.ebbwatch.store;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Room kept free on the disk of the records, as a file of {@value #BYTES} bytes: a service that starts on a full disk gives it
 * up and watches, where it could not even open its records otherwise.
 */
public final class Reserve {
    private static final Logger LOG = LoggerFactory.getLogger(Reserve.class);

    static final int BYTES = 2 << 20;
    private static final long LITTLE_ROOM_BYTES = 1 << 20;
    private static final int CHUNK = 1 << 16;
    private static final String NAME = "reserve";

    private Reserve() {}

    /**
     * Opens records in this folder, giving up the reserve where they cannot be opened for want of room.
     *
     * @param opening what is tried, and tried again
     * @throws StorageException if they cannot be opened
     */
    public static <T> T open(Path directory, Supplier<T> opening) {
        try {
            T opened = opening.get();
            keep(directory);
            return opened;
        } catch (StorageException e) {
            if (!giveUp(directory)) {
                throw e;
            }
            LOG.error("The records could not be opened; the room kept for this is given up and it is tried again", e);
            return opening.get();
        }
    }

    /** Keeps it, unless it is there already or would take more than a third of the room there is. */
    static void keep(Path directory) {
        Path file = directory.resolve(NAME);
        if (Files.exists(file) || directory.toFile().getUsableSpace() < 3L * BYTES) {
            return;
        }
        try (OutputStream out = Files.newOutputStream(file)) {
            for (int written = 0; written < BYTES; written += CHUNK) {
                out.write(new byte[CHUNK]);
            }
        } catch (IOException e) {
            delete(file);
        }
    }

    /** Whether there is so little room in this folder that nothing can be begun there. */
    static boolean isFull(Path directory) {
        return directory.toFile().getUsableSpace() < LITTLE_ROOM_BYTES;
    }

    /**
     * Makes room on a full disk.
     *
     * @return whether there was any to make, and need to
     */
    static boolean giveUp(Path directory) {
        return isFull(directory) && delete(directory.resolve(NAME));
    }

    private static boolean delete(Path file) {
        try {
            return Files.deleteIfExists(file);
        } catch (IOException e) {
            return false;
        }
    }
}
