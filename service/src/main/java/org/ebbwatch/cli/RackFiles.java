package org.ebbwatch.cli;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.rack.RackFileFaulty;

/** Reads rack files that commands are given. */
final class RackFiles {
    private RackFiles() {}

    /**
     * A rack file.
     *
     * @throws Refusal if it cannot be read, or anything in it is wrong
     */
    static RackFile read(Path file) throws Refusal {
        try {
            return RackFile.read(file);
        } catch (RackFileFaulty e) {
            throw new Refusal(e.getMessage());
        } catch (NoSuchFileException e) {
            throw new Refusal("there is no file " + file);
        } catch (IOException e) {
            throw new Refusal("cannot read the rack file " + file + ": " + e.getMessage());
        }
    }
}
