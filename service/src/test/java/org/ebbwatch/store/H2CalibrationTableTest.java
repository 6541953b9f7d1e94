package org.ebbwatch.store;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

class H2CalibrationTableTest extends CalibrationTableContract {

    @TempDir
    Path directory;

    @Override
    Database open() {
        return H2Database.open(directory);
    }
}
