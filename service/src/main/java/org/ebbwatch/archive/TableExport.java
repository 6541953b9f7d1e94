package org.ebbwatch.archive;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.csv.CsvWriter;

/** A table of the database as a CSV file, and as a resource of a Data Package. */
final class TableExport {
    private TableExport() {}

    /** Writes a table into the folder; gives its resource. */
    static Map<String, Object> write(Connection connection, String table, String order, Path folder)
            throws SQLException, IOException {
        Path file = folder.resolve(table.replace('_', '-') + ".csv");
        List<Object> fields = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select * from " + table + " order by " + order);
                OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            ResultSetMetaData columns = row.getMetaData();
            List<String> names = new ArrayList<>();
            for (int i = 1; i <= columns.getColumnCount(); i++) {
                names.add(columns.getColumnName(i).toLowerCase(Locale.ROOT));
                fields.add(field(names.get(i - 1), columns.getColumnType(i)));
            }
            var csv = new CsvWriter(out);
            csv.line(names);
            while (row.next()) {
                csv.line(values(row, columns));
            }
        }
        return resource(table, file, fields);
    }

    private static List<Object> values(ResultSet row, ResultSetMetaData columns) throws SQLException {
        List<Object> values = new ArrayList<>();
        for (int i = 1; i <= columns.getColumnCount(); i++) {
            boolean binary = type(columns.getColumnType(i)).equals("binary");
            byte[] bytes = binary ? row.getBytes(i) : null;
            values.add(bytes == null ? row.getObject(i) : HexFormat.of().formatHex(bytes));
        }
        return values;
    }

    private static Map<String, Object> field(String name, int sqlType) {
        Map<String, Object> field = new LinkedHashMap<>();
        field.put("name", name);
        String type = type(sqlType);
        field.put("type", type.equals("binary") ? "string" : type);
        return field;
    }

    private static String type(int sqlType) {
        return switch (sqlType) {
            case Types.SMALLINT, Types.INTEGER, Types.BIGINT -> "integer";
            case Types.BOOLEAN -> "boolean";
            case Types.BINARY, Types.VARBINARY, Types.BLOB -> "binary";
            default -> "string";
        };
    }

    private static Map<String, Object> resource(String table, Path file, List<Object> fields) throws IOException {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("fields", fields);
        schema.put("missingValues", List.of(""));
        Map<String, Object> dialect = new LinkedHashMap<>();
        dialect.put("delimiter", ",");
        dialect.put("lineTerminator", "\r\n");
        dialect.put("doubleQuote", true);
        dialect.put("header", true);
        Map<String, Object> resource = ExportedFile.resource(table.replace('_', '-'), file, "csv", "text/csv");
        resource.put("profile", "tabular-data-resource");
        resource.put("encoding", "utf-8");
        resource.put("dialect", dialect);
        resource.put("schema", schema);
        return resource;
    }
}
