package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A statement that changes one row.
 *
 * @param values in place of its question marks: texts, whole numbers, UUIDs, truth values, or null. A NUL in a text becomes U+FFFD,
 *     for not every database can hold one.
 */
record Change(String sql, Object[] values) {
    private static final String NO_SUCH_ROW = "02000";

    Change {
        values = Arrays.stream(values).map(Change::storable).toArray();
    }

    private static Object storable(Object value) {
        return value instanceof String text ? text.replace('\0', '\uFFFD') : value;
    }

    /**
     * Makes these changes within a transaction.
     *
     * @return those the database refuses for ever, with its reason; all others are made
     * @throws SQLException if the database cannot be relied on now
     */
    static List<String> applyAll(Connection connection, List<Change> changes) throws SQLException {
        List<String> refused = new ArrayList<>();
        for (Change change : changes) {
            Savepoint before = connection.setSavepoint();
            try {
                change.apply(connection);
                connection.releaseSavepoint(before);
            } catch (SQLException e) {
                if (!isRefusal(e)) {
                    throw e;
                }
                connection.rollback(before);
                refused.add(change + ": " + e.getMessage());
            }
        }
        return refused;
    }

    /** SQL state classes of ISO/IEC 9075: 02 no such row, 22 unusable value, 23 constraint violated. */
    private static boolean isRefusal(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return state.startsWith("02") || state.startsWith("22") || state.startsWith("23");
    }

    private void apply(Connection connection) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            if (statement.executeUpdate() != 1) {
                throw new SQLException("there is no such row", NO_SUCH_ROW);
            }
        }
    }

    @Override
    public String toString() {
        return sql.substring(0, sql.indexOf(' ', sql.indexOf(' ') + 1)) + " " + Arrays.toString(values);
    }
}
