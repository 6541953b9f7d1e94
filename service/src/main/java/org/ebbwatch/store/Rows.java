package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads the rows a query finds. */
public final class Rows {

    private Rows() {}

    /** Makes one object of the row a result set stands on. */
    @FunctionalInterface
    public interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Runs the query with these values in place of its question marks. */
    public static <T> List<T> read(Database database, String sql, RowReader<T> reader, Object... values)
            throws SQLException {
        try (Connection connection = database.dataSource().getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            List<T> rows = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    rows.add(reader.read(row));
                }
            }
            return rows;
        }
    }
}
