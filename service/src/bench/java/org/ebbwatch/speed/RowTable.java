package org.ebbwatch.speed;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;

/**
 * The reference: a table with a row for each sample, nothing decoded and nothing judged, 64 channels a scan, committed every 128
 * scans (two seconds of readings of a busy rack) in batches as its database likes them.
 *
 * @param name for people
 * @param url of a database in the folder {@code %s}
 */
record RowTable(String name, String url) {
    private static final int CHANNELS = 64;
    private static final int SCANS_A_COMMIT = 128;

    static List<RowTable> all() {
        return List.of(
                new RowTable("rows in H2", "jdbc:h2:%s/rows"), new RowTable("rows in SQLite", "jdbc:sqlite:%s/rows"));
    }

    Spent write(long samples) throws IOException, SQLException {
        Path directory = Files.createTempDirectory("rows");
        try (Connection connection = DriverManager.getConnection(url.formatted(directory));
                Statement statement = connection.createStatement()) {
            if (url.contains("sqlite")) {
                statement.execute("pragma journal_mode = wal");
                statement.execute("pragma synchronous = normal");
            }
            statement.execute("create table sample (channel integer not null, event_millis bigint not null,"
                    + " scan bigint not null, state integer not null, volts integer not null,"
                    + " celsius integer not null, primary key (channel, event_millis))");
            connection.setAutoCommit(false);
            try (PreparedStatement insert =
                    connection.prepareStatement("insert into sample values (?, ?, ?, ?, ?, ?)")) {
                insert(connection, insert, 0, samples / 4);
                return insert(connection, insert, samples / 4, samples);
            }
        } finally {
            Folders.delete(directory);
        }
    }

    private static Spent insert(Connection connection, PreparedStatement insert, long from, long to)
            throws SQLException {
        Random noise = new Random(1);
        long clock = -System.nanoTime();
        long work = -workNanos();
        for (long scan = from / CHANNELS; scan < to / CHANNELS; scan++) {
            for (int channel = 0; channel < CHANNELS; channel++) {
                insert.setInt(1, channel);
                insert.setLong(2, scan * 1_000);
                insert.setLong(3, scan);
                insert.setInt(4, 35);
                insert.setInt(5, 39_000 + noise.nextInt(4));
                insert.setInt(6, 1_100 + noise.nextInt(4));
                insert.addBatch();
            }
            if (scan % SCANS_A_COMMIT == 0) {
                insert.executeBatch();
                connection.commit();
            }
        }
        insert.executeBatch();
        connection.commit();
        work += workNanos();
        clock += System.nanoTime();
        return new Spent((double) work / (to - from), (double) clock / (to - from));
    }

    /** Of this thread: what a database does on threads of its own is a gift to it. */
    private static long workNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }
}
