package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ebbwatch.postgres.Postgres;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The migrations of H2 and PostgreSQL are two tellings of one story. */
class SchemaTest {
    /** What one database needs for itself. */
    private static final Set<String> OWN = Set.of("flyway_schema_history", "committed_batch");

    @TempDir
    Path directory;

    @Test
    void every_version_is_in_both_folders_under_the_same_name() throws Exception {
        assertThat(versions("postgresql")).isEqualTo(versions("h2")).isNotEmpty();
    }

    @Test
    void both_databases_have_the_same_tables_columns_and_keys() throws SQLException {
        try (Database h2 = H2Database.open(directory);
                Database postgres = PostgresDatabase.open(Postgres.shared().database(), 1)) {
            Map<String, List<String>> told = tables(h2);

            assertThat(told).containsKeys("passage", "journal", "segment", "alarm", "outbox");
            assertThat(tables(postgres)).isEqualTo(told);
        }
    }

    private static Set<String> versions(String folder) throws URISyntaxException, IOException {
        Path path = Path.of(SchemaTest.class
                .getResource("/db/migration/" + folder + "/V1__passages_and_trace.sql")
                .toURI());
        try (Stream<Path> files = Files.list(path.getParent())) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.startsWith("V"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static Map<String, List<String>> tables(Database database) throws SQLException {
        Map<String, List<String>> tables = new TreeMap<>();
        try (Connection connection = database.dataSource().getConnection()) {
            DatabaseMetaData told = connection.getMetaData();
            String schema = connection.getSchema();
            for (String table : names(told.getTables(null, schema, "%", new String[] {"TABLE", "BASE TABLE"}))) {
                if (!OWN.contains(lower(table))) {
                    tables.put(lower(table), describe(told, schema, table));
                }
            }
        }
        return tables;
    }

    private static List<String> names(ResultSet rows) throws SQLException {
        List<String> names = new ArrayList<>();
        while (rows.next()) {
            names.add(rows.getString("TABLE_NAME"));
        }
        return names;
    }

    private static List<String> describe(DatabaseMetaData told, String schema, String table) throws SQLException {
        List<String> lines = new ArrayList<>();
        ResultSet column = told.getColumns(null, schema, table, "%");
        while (column.next()) {
            String type = type(column.getString("TYPE_NAME"));
            lines.add(String.join(
                    " ",
                    lower(column.getString("COLUMN_NAME")),
                    type,
                    type.equals("text") ? column.getString("COLUMN_SIZE") : "",
                    column.getString("IS_NULLABLE"),
                    column.getString("IS_AUTOINCREMENT")));
        }
        Map<String, List<String>> keys = new TreeMap<>();
        ResultSet key = told.getIndexInfo(null, schema, table, true, true);
        while (key.next()) {
            keys.computeIfAbsent(key.getString("INDEX_NAME"), none -> new ArrayList<>())
                    .add(lower(key.getString("COLUMN_NAME")));
        }
        keys.values().stream().map(columns -> "unique " + columns).sorted().forEach(lines::add);
        List<String> references = new ArrayList<>();
        ResultSet reference = told.getImportedKeys(null, schema, table);
        while (reference.next()) {
            references.add(lower(reference.getString("FKCOLUMN_NAME") + " references "
                    + reference.getString("PKTABLE_NAME") + ' ' + reference.getString("PKCOLUMN_NAME")));
        }
        references.stream().sorted().forEach(lines::add);
        return lines;
    }

    /** One name for what each database calls its own way. */
    private static String type(String its) {
        return switch (lower(its)) {
            case "character varying", "varchar" -> "text";
            case "bigint", "int8", "bigserial" -> "64 bits";
            case "integer", "int4" -> "32 bits";
            case "smallint", "int2" -> "16 bits";
            case "boolean", "bool" -> "truth";
            case "binary", "binary varying", "binary large object", "bytea" -> "bytes";
            case "uuid" -> "uuid";
            default -> throw new AssertionError("a type both databases should be known to have: " + its);
        };
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
