package org.ebbwatch.store;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

class H2ReceiptTableTest extends ReceiptTableContract {

    @TempDir
    Path directory;

    @Override
    Database open() {
        return H2Database.open(directory);
    }
}
