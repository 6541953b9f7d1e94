package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class H2DatabaseTest {

    @TempDir
    Path directory;

    @Test
    void a_database_keeps_its_rows_over_closing_and_opening() throws SQLException {
        try (H2Database database = H2Database.open(directory)) {
            fill(database);
        }
        try (H2Database database = H2Database.open(directory)) {
            assertThat(rows(database)).isEqualTo(ROWS);
        }
    }

    @Test
    void a_database_that_is_open_is_not_opened_again() {
        try (H2Database open = H2Database.open(directory)) {
            assertThat(open.dataSource()).isNotNull();
            String url = "jdbc:h2:file:" + directory.resolve("ebbwatch");
            assertThatThrownBy(() -> DriverManager.getConnection(url, "sa", "").close())
                    .hasMessageContaining("already in use");
        }
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "it has no permissions of this kind")
    void a_folder_that_it_makes_is_its_owners_alone_and_one_that_is_there_stays_as_it_is() throws IOException {
        Path made = directory.resolve("deep").resolve("records");
        H2Database.open(made).close();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(made)))
                .isEqualTo("rwx------");

        Path shared = Files.createDirectory(directory.resolve("shared"));
        Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString("rwxr-x---"));
        H2Database.open(shared).close();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(shared)))
                .isEqualTo("rwxr-x---");
    }

    @Test
    void a_path_that_would_be_taken_for_settings_is_refused() {
        assertThatThrownBy(() -> H2Database.open(directory.resolve("a;b=c")))
                .isInstanceOf(StorageException.class)
                .hasMessageContaining("semicolon");
    }

    @Test
    void an_interrupted_reader_does_not_cost_the_database() throws Exception {
        try (H2Database database = H2Database.open(directory)) {
            fill(database);
            database.force();
        }
        try (H2Database database = H2Database.open(directory)) {
            readInterrupted(() -> rows(database));

            assertThat(rows(database)).isEqualTo(ROWS);
            database.force();
        }
    }

    @Test
    void the_usual_file_system_of_h2_would_be_lost_to_an_interrupted_reader() throws Exception {
        try (H2Database database = H2Database.open(directory)) {
            fill(database);
        }
        String url = "jdbc:h2:file:" + directory.resolve("ebbwatch") + ";DB_CLOSE_DELAY=-1";
        try (Connection keeper = DriverManager.getConnection(url, "sa", "")) {
            Throwable failure = readInterrupted(() -> {
                try (Connection connection = DriverManager.getConnection(url, "sa", "")) {
                    return count(connection);
                }
            });

            assertThat(failure).isInstanceOf(SQLException.class);
            assertThatThrownBy(() -> count(keeper)).isInstanceOf(SQLException.class);
        } catch (SQLException closing) {
            assertThat(closing.getMessage()).contains("MVStoreException");
        }
    }

    @Test
    void a_damaged_database_is_refused_and_a_person_told_what_to_do() throws Exception {
        try (H2Database database = H2Database.open(directory)) {
            fill(database);
        }
        Path file = directory.resolve("ebbwatch.mv.db");
        byte[] noise = new byte[(int) Files.size(file)];
        new Random(1).nextBytes(noise);
        Files.write(file, noise);

        assertThatThrownBy(() -> H2Database.open(directory))
                .isInstanceOf(StorageException.class)
                .hasMessageContainingAll(file.toString(), "is damaged", "move the file away", "docs/records.md");
        assertThat(Files.size(file)).as("nothing is done to it").isEqualTo(noise.length);
    }

    @Test
    void an_emptied_database_is_damaged_and_not_a_new_one() throws Exception {
        H2Database.open(directory).close();
        Files.write(directory.resolve("ebbwatch.mv.db"), new byte[0]);

        assertThatThrownBy(() -> H2Database.open(directory)).hasMessageContaining("it is empty");
    }

    @Test
    void a_database_whose_file_went_away_is_not_made_anew_and_taken_up_when_it_is_back() throws Exception {
        try (H2Database database = H2Database.open(directory)) {
            fill(database);
            database.force();
            try (Connection connection = database.dataSource().getConnection();
                    Statement statement = connection.createStatement()) {
                statement.execute("SHUTDOWN");
            } catch (SQLException closed) {
                // So it is wanted: as when the disk fails.
            }
            Path away = Files.createDirectory(directory.resolve("away")).resolve("ebbwatch.mv.db");
            Files.move(directory.resolve("ebbwatch.mv.db"), away);

            assertThatThrownBy(() -> rows(database)).isInstanceOf(SQLException.class);
            assertThat(directory.resolve("ebbwatch.mv.db")).doesNotExist();

            Files.move(away, directory.resolve("ebbwatch.mv.db"));
            await().ignoreExceptions()
                    .untilAsserted(() -> assertThat(rows(database)).isEqualTo(ROWS));
        }
    }

    private static final long ROWS = 200;

    private static void fill(Database database) throws SQLException {
        try (Connection connection = database.dataSource().getConnection();
                Statement statement = connection.createStatement()) {
            for (int row = 0; row < ROWS; row++) {
                statement.executeUpdate(
                        "insert into board_boot values ('B', " + row + ", secure_rand(32), 1, repeat('x', 20000), 0)");
            }
        }
    }

    private static long rows(Database database) throws SQLException {
        try (Connection connection = database.dataSource().getConnection()) {
            return count(connection);
        }
    }

    private static long count(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                var row = statement.executeQuery("select count(*) from board_boot where identity like '%x'")) {
            row.next();
            return row.getLong(1);
        }
    }

    @FunctionalInterface
    private interface Reading {
        long read() throws SQLException;
    }

    /** Reads on a thread that is interrupted already, many times; returns what went wrong. */
    private static Throwable readInterrupted(Reading reading) throws InterruptedException {
        AtomicReference<Throwable> failure = new AtomicReference<>();
        for (int attempt : List.of(1, 2, 3)) {
            Thread reader = new Thread(
                    () -> {
                        Thread.currentThread().interrupt();
                        try {
                            reading.read();
                        } catch (SQLException e) {
                            failure.set(e);
                        }
                    },
                    "reader " + attempt);
            reader.start();
            reader.join();
        }
        return failure.get();
    }
}
