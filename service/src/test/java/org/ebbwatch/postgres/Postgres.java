package org.ebbwatch.postgres;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.awaitility.Awaitility;
import org.ebbwatch.store.PostgresLogin;
import org.junit.jupiter.api.Assumptions;
import org.opentest4j.TestAbortedException;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.containers.ContainerFetchException;
import org.testcontainers.containers.GenericContainer;
import org.testcontainers.containers.Network;
import org.testcontainers.utility.DockerImageName;

/** A PostgreSQL server in a container, which can be hung up and killed. */
public final class Postgres implements AutoCloseable {
    public static final String ALIAS = "postgres";
    public static final int PORT = 5_432;
    public static final String USER = "postgres";
    public static final String PASSWORD = "only for tests";

    private static final Duration PATIENCE = Duration.ofMinutes(2);
    private static final AtomicInteger DATABASES = new AtomicInteger();
    private static Postgres shared;
    private static String whyNone;

    private final GenericContainer<?> container;
    private final int port;

    private Postgres(GenericContainer<?> container, int port) {
        this.container = container;
        this.port = port;
    }

    /** One that many tests share; it ends with the tests. They are reported as skipped where there can be none: ask before all. */
    public static synchronized Postgres shared() {
        if (whyNone != null) {
            throw new TestAbortedException(whyNone);
        }
        if (shared == null) {
            try {
                shared = start(null);
            } catch (TestAbortedException e) {
                whyNone = e.getMessage();
                throw e;
            }
            Runtime.getRuntime().addShutdownHook(new Thread(shared::close, "end of the shared database"));
        }
        return shared;
    }

    /** One of a test's own, on a network or not (null), where others know it as {@link #ALIAS}. */
    public static Postgres start(Network network) {
        assumeTrue(
                DockerClientFactory.instance().isDockerAvailable(),
                "no container engine answers: no PostgreSQL to test with");
        String image = System.getProperty("postgres.image", "postgres:15");
        int port = freePort();
        var container = new GenericContainer<>(DockerImageName.parse(image))
                .withEnv("POSTGRES_PASSWORD", PASSWORD)
                .withExposedPorts(PORT);
        container.setPortBindings(List.of("127.0.0.1:" + port + ":" + PORT));
        if (network != null) {
            container.withNetwork(network).withNetworkAliases(ALIAS);
        }
        try {
            container.start();
        } catch (ContainerFetchException e) {
            Assumptions.abort(
                    "the image " + image + " cannot be had; -Dpostgres.image names another: " + e.getMessage());
        }
        var postgres = new Postgres(container, port);
        postgres.awaitAnswer();
        return postgres;
    }

    /** An empty database of its own. */
    public PostgresLogin database() {
        String name = "test_" + DATABASES.incrementAndGet();
        execute(USER, "create database " + name);
        return login(name);
    }

    public PostgresLogin login(String database) {
        return new PostgresLogin(url(database), USER, PASSWORD);
    }

    /** Does something to a database behind the service's back. */
    public void execute(String database, String sql) {
        try (Connection connection = DriverManager.getConnection(url(database), USER, PASSWORD);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new AssertionError("cannot " + sql, e);
        }
    }

    /** What a question to a database is answered with, in its first row and column. */
    public String text(String database, String sql) {
        try (Connection connection = DriverManager.getConnection(url(database), USER, PASSWORD);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(sql)) {
            return answer.next() ? answer.getString(1) : "";
        } catch (SQLException e) {
            throw new AssertionError("cannot " + sql, e);
        }
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + '/' + database;
    }

    /** It says nothing any more, and its connections stay open: a network that drops everything. */
    public void hangUp() {
        container
                .getDockerClient()
                .pauseContainerCmd(container.getContainerId())
                .exec();
    }

    /** It goes on where it was hung up. */
    public void goOn() {
        container
                .getDockerClient()
                .unpauseContainerCmd(container.getContainerId())
                .exec();
    }

    /** All its processes end at once, whatever they are about. */
    public void kill() {
        container.getDockerClient().killContainerCmd(container.getContainerId()).exec();
    }

    /** Starts it again after a kill, at the same address. */
    public void startAgain() {
        container
                .getDockerClient()
                .startContainerCmd(container.getContainerId())
                .exec();
        awaitAnswer();
    }

    private void awaitAnswer() {
        Awaitility.await().atMost(PATIENCE).ignoreExceptions().until(() -> {
            DriverManager.getConnection(url(USER) + "?loginTimeout=2", USER, PASSWORD)
                    .close();
            return true;
        });
    }

    private static int freePort() {
        try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new AssertionError("no port is free", e);
        }
    }

    @Override
    public void close() {
        container.stop();
    }
}
