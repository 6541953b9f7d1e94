package org.ebbwatch.store;

import org.ebbwatch.postgres.Postgres;
import org.junit.jupiter.api.BeforeAll;

class PostgresReceiptTableTest extends ReceiptTableContract {
    private static Postgres postgres;

    private PostgresLogin login;

    @BeforeAll
    static void startPostgres() {
        postgres = Postgres.shared();
    }

    @Override
    Database open() {
        if (login == null) {
            login = postgres.database();
        }
        return PostgresDatabase.open(login, 1);
    }
}
