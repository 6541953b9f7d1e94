package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Facts while the database is away, or goes away in the middle of a commit. */
class QueuedFactsTest {
    private static final UUID PASSAGE = UUID.fromString("0193f0a0-0000-7000-8000-000000000001");
    private static final UUID DATABASE = UUID.fromString("0193f0a0-0000-4000-8000-000000000001");
    private static final WallLabel WALL = new WallLabel(1_790_000_000_000L, "known");

    /** How the database behaves. */
    private enum Mood {
        WELL,
        AWAY,
        LOST_BEFORE_COMMIT,
        LOST_AFTER_COMMIT
    }

    @TempDir
    Path directory;

    private H2Database h2;
    private FactQueue queue;
    private QueuedFacts keeper;
    private JournalStore journal;
    private Mood mood = Mood.WELL;

    @BeforeEach
    void openAll() throws IOException, SQLException {
        h2 = H2Database.open(directory.resolve("database"));
        try (Connection connection = h2.dataSource().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("create table committed_batch (number bigint)");
            statement.execute("insert into committed_batch values (0)");
        }
        openQueue(0);
        journal.openPassage(
                new PassageRow(PASSAGE, "A-17", "bench", 3, 1, WALL, "{}", "{}", false, 1, Optional.empty()));
        journal.commitFacts();
    }

    private void openQueue(long committed) throws IOException {
        queue = FactQueue.open(directory, DATABASE);
        keeper = new QueuedFacts(new Moody(), queue, committed);
        journal = new JournalStore(h2, () -> {}, keeper);
    }

    @AfterEach
    void closeAll() throws IOException {
        queue.close();
        h2.close();
    }

    private void say(int sequence) {
        journal.append(new JournalRow(PASSAGE, sequence, sequence, sequence, "said", "{}", WALL));
        journal.commitFacts();
    }

    private Iterable<Long> said() {
        return journal.reader().journal(PASSAGE).stream()
                .map(JournalRow::sequence)
                .toList();
    }

    @Test
    void facts_wait_on_disk_while_the_database_is_away_and_follow_in_their_order() {
        mood = Mood.AWAY;
        for (int sequence = 1; sequence <= 120; sequence++) {
            say(sequence);
        }
        assertThat(said()).isEmpty();
        assertThat(journal.trouble())
                .hasValueSatisfying(why -> assertThat(why).contains("connection refused", "120 batches"));

        mood = Mood.WELL;
        journal.commitFacts();
        assertThat(said()).as("a caller is not held up for all of them").hasSize(100);
        say(121);
        journal.commitFacts();
        assertThat(said()).hasSize(121);
        assertThat(journal.trouble()).isEmpty();
    }

    @Test
    void facts_that_waited_are_taken_up_after_a_crash() throws IOException {
        mood = Mood.AWAY;
        say(1);
        say(2);
        queue.close();

        mood = Mood.WELL;
        openQueue(1);
        keeper.drainAll();
        assertThat(said()).containsExactly(1L, 2L);
        say(3);
        assertThat(said()).containsExactly(1L, 2L, 3L);
    }

    @Test
    void a_crash_between_a_commit_and_taking_its_facts_out_of_the_queue_doubles_nothing() throws IOException {
        mood = Mood.AWAY;
        say(1);
        mood = Mood.LOST_AFTER_COMMIT;
        journal.commitFacts();
        assertThat(said()).containsExactly(1L);
        queue.close();

        mood = Mood.WELL;
        openQueue(2);
        keeper.drainAll();
        say(2);
        assertThat(said()).containsExactly(1L, 2L);
    }

    @Test
    void a_commit_of_which_nobody_learned_that_it_was_done_is_not_done_twice() {
        mood = Mood.LOST_AFTER_COMMIT;
        say(1);
        assertThat(said()).containsExactly(1L);
        assertThat(journal.trouble()).isPresent();

        mood = Mood.WELL;
        say(2);
        assertThat(said()).containsExactly(1L, 2L);
        assertThat(journal.trouble()).isEmpty();
    }

    @Test
    void a_commit_that_was_cut_off_is_done_again() {
        mood = Mood.LOST_BEFORE_COMMIT;
        say(1);
        assertThat(said()).isEmpty();

        mood = Mood.WELL;
        say(2);
        assertThat(said()).containsExactly(1L, 2L);
    }

    @Test
    void facts_that_are_safe_nowhere_are_not_called_kept_and_are_kept_once_when_that_is_over() throws IOException {
        queue.close();
        mood = Mood.LOST_AFTER_COMMIT;
        assertThatThrownBy(() -> say(1)).isInstanceOf(StorageException.class).hasMessageContaining("not safe on disk");

        mood = Mood.WELL;
        say(2);
        assertThat(said()).containsExactly(1L, 2L);
    }

    @Test
    void a_fact_the_database_refuses_for_ever_does_not_hold_up_the_others_in_the_queue() {
        mood = Mood.AWAY;
        say(1);
        journal.append(new JournalRow(PASSAGE, 1, 0, 0, "same number", "{}", WALL));
        say(2);

        mood = Mood.WELL;
        assertThatThrownBy(journal::commitFacts).hasMessageContaining("same number");
        assertThat(said()).containsExactly(1L, 2L);
    }

    /** The database, which is not always well. */
    private final class Moody implements Database {

        @Override
        public DataSource dataSource() {
            return (DataSource) proxy(DataSource.class, h2.dataSource(), name -> {
                if (mood == Mood.AWAY) {
                    throw new SQLException("connection refused");
                }
            });
        }

        private Object proxy(Class<?> type, Object target, Before before) {
            return Proxy.newProxyInstance(
                    getClass().getClassLoader(), new Class<?>[] {type}, (proxy, method, arguments) -> {
                        before.call(method.getName());
                        Object result;
                        try {
                            result = method.invoke(target, arguments);
                        } catch (InvocationTargetException e) {
                            throw e.getCause();
                        }
                        if (method.getName().equals("commit") && mood == Mood.LOST_AFTER_COMMIT) {
                            throw new SQLException("connection reset");
                        }
                        return result instanceof Connection connection
                                ? proxy(Connection.class, connection, this::beforeCommit)
                                : result;
                    });
        }

        private void beforeCommit(String name) throws SQLException {
            if (name.equals("commit") && mood == Mood.LOST_BEFORE_COMMIT) {
                throw new SQLException("connection reset");
            }
        }

        @Override
        public void force() throws SQLException {
            h2.force();
        }

        @Override
        public void close() {
            h2.close();
        }
    }

    @FunctionalInterface
    private interface Before {
        void call(String method) throws SQLException;
    }
}
