package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.postgres.Postgres;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.store.PostgresLogin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordPlaceTest {
    @TempDir
    Path folder;

    private RackFile rackFile(String url, String password) throws Exception {
        return RackFile.parse(
                """
                storage: records
                database:
                  url: %s
                  user: postgres
                  %s
                boards:
                  - name: left
                    port: COM3
                """
                        .formatted(url, password),
                "rack.yaml",
                folder);
    }

    @Test
    void the_password_comes_from_where_the_rack_file_says_and_is_not_shown() throws Exception {
        RackFile file = rackFile("jdbc:postgresql://db.example/ebbwatch", "passwordEnvironment: DATABASE_PASSWORD");

        RecordPlace place = RecordPlace.of(file, Map.of("DATABASE_PASSWORD", "quite secret"));

        assertThat(place.database().map(PostgresLogin::password)).contains("quite secret");
        assertThat(place.toString()).contains("db.example").doesNotContain("quite secret");
    }

    @Test
    void a_password_that_is_not_there_is_named_by_its_place() throws Exception {
        RackFile file = rackFile("jdbc:postgresql://db.example/ebbwatch", "passwordEnvironment: DATABASE_PASSWORD");

        assertThatThrownBy(() -> RecordPlace.of(file, Map.of()))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("DATABASE_PASSWORD");
    }

    @Test
    void a_rack_file_without_a_database_means_its_folder() throws Exception {
        RackFile file = RackFile.parse("boards:\n  - name: left\n    port: COM3\n", "rack.yaml", folder);

        assertThat(RecordPlace.of(file, Map.of())).isEqualTo(new RecordPlace(folder.resolve("data"), Optional.empty()));
    }

    @Test
    void bundles_are_asked_for_by_the_rack_file_where_the_records_are_in_postgresql() throws Exception {
        PostgresLogin login = Postgres.shared().database();
        Files.writeString(folder.resolve("database.password"), login.password() + "\n");
        String text = "storage: records\ndatabase:\n  url: " + login.url() + "\n  user: " + login.user()
                + "\n  passwordFile: database.password\nboards:\n  - name: left\n    port: COM3\n";
        Path file = Files.writeString(folder.resolve("rack.yaml"), text);
        try (StoredRack rack = RecordPlace.of(RackFile.read(file), Map.of()).open()) {
            assertThat(rack.cards()).isEmpty();
        }
        var said = new StringWriter();

        int code = Ebbwatch.commandLine()
                .setErr(new PrintWriter(said))
                .execute(
                        "bundle",
                        "--rack",
                        file.toString(),
                        "--to",
                        folder.resolve("bundles").toString());

        assertThat(code).isEqualTo(3);
        assertThat(said.toString()).contains("hold no such passage", login.url());
    }
}
