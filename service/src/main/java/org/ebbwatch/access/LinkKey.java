package org.ebbwatch.access;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * The key by which links in messages are signed: 256 random bits, kept in the folder of the records for its owner alone. Whoever
 * removes the file makes all links worthless.
 */
public final class LinkKey {
    /** Its name in the folder of the records. */
    public static final String NAME = "link-key";

    private static final int KEY_BYTES = 32;

    private LinkKey() {}

    /**
     * The key of the records in this folder, made where there is none.
     *
     * @throws IOException if it can be neither read nor made, or is damaged
     */
    public static byte[] of(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        if (!Files.exists(file)) {
            make(folder, file);
        }
        try {
            byte[] key = HexFormat.of()
                    .parseHex(Files.readString(file, StandardCharsets.US_ASCII).strip());
            if (key.length == KEY_BYTES) {
                return key;
            }
        } catch (IllegalArgumentException damaged) {
            // As told below.
        }
        throw new IOException("the file " + file + " is damaged; remove it, and all links sent so far are worthless");
    }

    private static void make(Path folder, Path file) throws IOException {
        byte[] random = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(random);
        Path fresh = Files.createTempFile(folder, NAME, ".new");
        try {
            OwnersFile.keepToOwner(fresh);
            Files.writeString(fresh, HexFormat.of().formatHex(random) + '\n', StandardCharsets.US_ASCII);
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }
}
