package org.ebbwatch.trace;

import org.ebbwatch.postgres.Postgres;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.PostgresDatabase;
import org.junit.jupiter.api.BeforeAll;

class PostgresTraceStoreTest extends TraceStoreContract {
    private static Postgres postgres;

    @BeforeAll
    static void startPostgres() {
        postgres = Postgres.shared();
    }

    @Override
    Database open() {
        return PostgresDatabase.open(postgres.database(), 1);
    }
}
