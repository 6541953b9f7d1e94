package org.ebbwatch.trace;

import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;

class H2TraceStoreTest extends TraceStoreContract {

    @Override
    Database open() {
        return H2Database.open(directory);
    }
}
