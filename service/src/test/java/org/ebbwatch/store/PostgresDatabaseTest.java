package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import org.awaitility.Awaitility;
import org.ebbwatch.postgres.Postgres;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PostgresDatabaseTest {
    private static final String END_ALL_SESSIONS = "select pg_terminate_backend(pid) from pg_stat_activity"
            + " where datname = current_database() and pid <> pg_backend_pid()";

    private static Postgres postgres;

    @TempDir
    Path folder;

    private PostgresLogin login;

    @BeforeAll
    static void startPostgres() {
        postgres = Postgres.shared();
    }

    @BeforeEach
    void makeDatabase() {
        login = postgres.database();
    }

    private String name() {
        return login.url().substring(login.url().lastIndexOf('/') + 1);
    }

    private static List<String> read(Database database, String sql) throws SQLException {
        return Rows.read(database, sql, row -> row.getString(1));
    }

    @Test
    void two_services_never_work_on_one_database() {
        try (Database first = PostgresDatabase.open(login, 1)) {
            assertThat(first.dataSource()).isNotNull();
            assertThatThrownBy(() -> PostgresDatabase.open(login, 1))
                    .isInstanceOf(StorageException.class)
                    .hasMessageContaining("another service works on it");
        }
        PostgresDatabase.open(login, 1).close();
    }

    @Test
    void a_service_whose_sessions_were_all_ended_comes_back_and_is_the_only_one_again() {
        try (Database database = PostgresDatabase.open(login, 1)) {
            postgres.execute(name(), END_ALL_SESSIONS);

            Awaitility.await().atMost(Duration.ofMinutes(1)).ignoreExceptions().untilAsserted(() -> assertThat(read(
                            database,
                            "select count(*) from pg_locks join pg_database d on d.oid = database"
                                    + " where locktype = 'advisory' and datname = current_database()"))
                    .containsExactly("1"));
            assertThatThrownBy(() -> PostgresDatabase.open(login, 1)).hasMessageContaining("another service");
        }
    }

    @Test
    void a_commit_lasts_whatever_the_role_is_used_to() throws SQLException {
        postgres.execute(name(), "alter database " + name() + " set synchronous_commit = off");
        try (Database database = PostgresDatabase.open(login, 1)) {
            assertThat(read(database, "show synchronous_commit")).containsExactly("on");
        }
    }

    @Test
    void a_server_that_loses_commits_in_a_power_cut_is_refused() {
        postgres.execute(name(), "alter system set fsync = off");
        try {
            postgres.execute(name(), "select pg_reload_conf()");
            Awaitility.await().atMost(Duration.ofMinutes(1)).untilAsserted(() -> assertThatThrownBy(
                            () -> PostgresDatabase.open(login, 1).close())
                    .isInstanceOf(StorageException.class)
                    .hasMessageContaining("fsync"));
        } finally {
            postgres.execute(name(), "alter system reset fsync");
            postgres.execute(name(), "select pg_reload_conf()");
        }
    }

    @Test
    void a_wrong_password_is_refused_at_once_and_not_shown() {
        var wrong = new PostgresLogin(login.url(), login.user(), "quite wrong");

        assertThatThrownBy(() -> PostgresDatabase.open(wrong, 1_000))
                .isInstanceOf(StorageException.class)
                .hasMessageContaining(login.url())
                .hasMessageNotContaining("quite wrong");
        assertThat(wrong.toString()).doesNotContain("quite wrong");
    }

    @Test
    void a_server_that_is_not_there_is_given_up_after_the_attempts() {
        var nowhere = new PostgresLogin("jdbc:postgresql://127.0.0.1:1/nothing", "nobody", "");

        assertThatThrownBy(() -> PostgresDatabase.open(nowhere, 2))
                .isInstanceOf(StorageException.class)
                .hasMessageContaining("127.0.0.1:1");
    }

    @Test
    void records_never_change_their_database_unnoticed() {
        Records.inPostgres(folder, login, 1).close();
        assertThatThrownBy(() -> Records.inFolder(folder)).hasMessageContaining("PostgreSQL");

        Path other = folder.resolve("other");
        Records.inFolder(other).close();
        assertThatThrownBy(() -> Records.inPostgres(other, login, 1)).hasMessageContaining("H2");
        assertThat(Files.exists(other.resolve("facts.queue"))).isFalse();

        PostgresLogin another = postgres.database();
        Records.inPostgres(folder, another, 1).close();
    }
}
