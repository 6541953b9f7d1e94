package org.ebbwatch.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.postgresql.ds.PGSimpleDataSource;

/** Sessions on a PostgreSQL server that neither end keeps when the other is gone. */
final class PostgresSession {
    /** What every session begins with: commits that last, and an end within some 15 s when nobody is there any more. */
    static final String SETTINGS = "set synchronous_commit = on; set idle_in_transaction_session_timeout = '10s';"
            + " set tcp_keepalives_idle = 5; set tcp_keepalives_interval = 3; set tcp_keepalives_count = 3";

    private static final int PATIENCE_SECONDS = 2;
    private static final long LOCK = 0x65626277_61746368L;

    private final PostgresLogin login;
    private final PGSimpleDataSource source = new PGSimpleDataSource();

    PostgresSession(PostgresLogin login) {
        this.login = login;
        source.setURL(login.url());
        source.setUser(login.user());
        source.setPassword(login.password());
        source.setApplicationName("ebbwatch");
        source.setConnectTimeout(PATIENCE_SECONDS);
        source.setLoginTimeout(PATIENCE_SECONDS);
        source.setSocketTimeout(PATIENCE_SECONDS);
        source.setTcpKeepAlive(true);
    }

    DataSource source() {
        return source;
    }

    /** Begins the one session that holds the lock, asking once a second. */
    Connection await(int attempts) {
        for (int attempt = 1; ; attempt++) {
            try {
                return begin();
            } catch (SQLException e) {
                if (attempt >= attempts || !mayPass(e)) {
                    throw new StorageException("cannot open the database " + login, e);
                }
            }
            try {
                TimeUnit.SECONDS.sleep(1);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new StorageException("nobody waits any more for the database " + login, e);
            }
        }
    }

    /** SQL state classes of the server: 08 no connection, 57 it is starting or stopping, 53 it has no room for another session. */
    private static boolean mayPass(SQLException e) {
        String state = String.valueOf(e.getSQLState());
        return state.startsWith("08") || state.startsWith("57") || state.startsWith("53");
    }

    /** Begins the session that holds the lock. */
    Connection begin() throws SQLException {
        Connection connection = source.getConnection();
        try (Statement statement = connection.createStatement()) {
            statement.execute(SETTINGS);
            if (!read(statement, "select pg_try_advisory_lock(" + LOCK + ")").equals("t")) {
                throw new SQLTransientConnectionException("another service works on it", "08004");
            }
            ask(connection);
            return connection;
        } catch (SQLException e) {
            end(connection);
            throw e;
        }
    }

    /**
     * Refuses a server that loses commits in a power cut.
     *
     * @throws StorageException if it is one
     */
    static void requireLasting(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (!read(statement, "show fsync").equals("on")) {
                throw new StorageException(
                        "the database server runs with fsync off: a power cut would cost it what people"
                                + " were told; set fsync = on in its configuration");
            }
        }
    }

    /** Asks for nothing but an answer. */
    static void ask(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            if (!read(statement, "select pg_is_in_recovery()").equals("f")) {
                throw new SQLTransientConnectionException("it is a standby and takes nothing", "57P03");
            }
        }
    }

    private static String read(Statement statement, String question) throws SQLException {
        try (ResultSet answer = statement.executeQuery(question)) {
            answer.next();
            return answer.getString(1);
        }
    }

    /** Ends a session, whatever state it is in; null does nothing. */
    @SuppressWarnings("EmptyCatch")
    static void end(Connection connection) {
        if (connection == null) {
            return;
        }
        try {
            connection.close();
        } catch (SQLException e) {
            // It is gone already.
        }
    }
}
