package org.ebbwatch.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A PostgreSQL database, 13 or later, on this machine or another, that may be away for a while and come back.
 *
 * <p>Whoever uses it may hold the rack's lock, so nobody waits for it long. A connection that says nothing for 2 s is given up. One
 * thread asks the database every second how it is; from the first time it does not answer until it does again, everybody else is
 * refused at once. That thread's session holds an advisory lock, so that no second service works on the same records; the server
 * ends sessions whose other end is gone after some 15 s, so that a service that comes back is not locked out by itself.
 *
 * <p>A commit with {@code synchronous_commit} is on the server's disk, which must not be run with {@code fsync} off.
 */
public final class PostgresDatabase implements Database {
    private static final Logger LOG = LoggerFactory.getLogger(PostgresDatabase.class);
    private static final String MIGRATIONS = "classpath:db/migration/postgresql";
    private static final int CONNECTIONS = 6;
    private static final long LONGEST_WAIT_MILLIS = 1_000;
    private static final long VALIDATION_MILLIS = 500;
    private static final long LOOK_MILLIS = 1_000;

    private final PostgresSession sessions;
    private final HikariDataSource pool;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread watchman = new Thread(this::watch, "database watchman");
    private Connection own;
    private volatile Optional<String> away = Optional.empty();

    private PostgresDatabase(PostgresSession sessions, Connection own) {
        this.sessions = sessions;
        this.own = own;
        this.pool = new Gate(poolOf(sessions));
    }

    /**
     * Opens the database and applies the migrations. One that does not answer, or that an old session still holds, is asked again
     * every second.
     *
     * @param attempts how often it is asked before that is given up, at least once
     * @throws StorageException if it stays away, refuses, belongs to another service, or cannot promise that a commit lasts
     */
    public static PostgresDatabase open(PostgresLogin login, int attempts) {
        var sessions = new PostgresSession(login);
        Connection own = sessions.await(attempts);
        try {
            PostgresSession.requireLasting(own);
            Flyway.configure()
                    .dataSource(login.url(), login.user(), login.password())
                    .locations(MIGRATIONS)
                    .load()
                    .migrate();
        } catch (SQLException | FlywayException e) {
            PostgresSession.end(own);
            throw new StorageException("cannot open the database " + login, e);
        } catch (StorageException e) {
            PostgresSession.end(own);
            throw e;
        }
        var database = new PostgresDatabase(sessions, own);
        database.watchman.setDaemon(true);
        database.watchman.start();
        return database;
    }

    @Override
    public DataSource dataSource() {
        return pool;
    }

    @Override
    public Optional<String> away() {
        return away;
    }

    /** What is committed is on the server's disk already. */
    @Override
    public void force() {}

    @Override
    public void close() {
        closing.countDown();
        try {
            watchman.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        pool.close();
        PostgresSession.end(own);
    }

    private void watch() {
        try {
            while (!closing.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                look();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void look() {
        try {
            if (own == null) {
                own = sessions.begin();
                pool.getHikariPoolMXBean().softEvictConnections();
            } else {
                PostgresSession.ask(own);
            }
            say(away, Optional.empty());
            away = Optional.empty();
        } catch (SQLException e) {
            Optional<String> why = Optional.of(String.valueOf(e.getMessage()));
            say(away, why);
            away = why;
            PostgresSession.end(own);
            own = null;
        }
    }

    /** Says when it goes and when it is back, not how often it was asked in between. */
    private void say(Optional<String> before, Optional<String> now) {
        if (now.isPresent() && own != null) {
            LOG.error(
                    "The database is away ({}); watching goes on, and facts and readings wait on the local disk",
                    now.get());
        } else if (before.isPresent() && now.isEmpty()) {
            LOG.info("The database is back");
        }
    }

    private static HikariConfig poolOf(PostgresSession sessions) {
        var config = new HikariConfig();
        config.setPoolName("ebbwatch");
        config.setDataSource(sessions.source());
        config.setConnectionInitSql(PostgresSession.SETTINGS);
        config.setMaximumPoolSize(CONNECTIONS);
        config.setMinimumIdle(1);
        config.setConnectionTimeout(LONGEST_WAIT_MILLIS);
        config.setValidationTimeout(VALIDATION_MILLIS);
        config.setInitializationFailTimeout(-1);
        return config;
    }

    /** Lets nobody wait for a database that is known to be away. */
    private final class Gate extends HikariDataSource {
        Gate(HikariConfig config) {
            super(config);
        }

        @Override
        public Connection getConnection() throws SQLException {
            Optional<String> why = away;
            if (why.isPresent()) {
                throw new SQLTransientConnectionException(why.get());
            }
            try {
                return super.getConnection();
            } catch (SQLException e) {
                away = Optional.of(String.valueOf(e.getMessage()));
                throw e;
            }
        }
    }
}
