package org.ebbwatch.access;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;

/** A file that only its owner may read and write. */
final class OwnersFile {
    private OwnersFile() {}

    static void keepToOwner(Path path) throws IOException {
        try {
            Files.setPosixFilePermissions(
                    path, EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE));
        } catch (UnsupportedOperationException notHere) {
            // A file system without permissions of this kind; the folder has to keep others out.
        }
    }
}
