package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every database must do for the journal. */
abstract class JournalStoreContract {

    private static final UUID FIRST = UUID.fromString("0193f0a0-0000-7000-8000-000000000001");
    private static final UUID SECOND = UUID.fromString("0193f0a0-0001-7000-8000-000000000000");
    private static final WallLabel WALL = new WallLabel(1_790_000_000_000L, "known");

    private final List<String> steps = new ArrayList<>();
    private Database database;
    private boolean readingsFail;
    private boolean forceFails;
    private JournalStore journal;
    private JournalReader reader;

    /** An empty database; the contract closes it. */
    abstract Database open();

    @BeforeEach
    void openDatabase() {
        database = open();
        journal = new JournalStore(new Watched(), this::flushReadings);
        reader = journal.reader();
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    @Test
    void what_was_written_is_read_back_as_it_was() {
        PassageRow passage = passage(FIRST);
        JournalRow start = entry(1, JournalRow.NO_SCAN, "moved");
        JournalRow gap = entry(2, 123_456, "gap");
        TransitionRow transition = new TransitionRow(FIRST, 1, 5, "CHECK_IN", "DRAIN", "proven: µ, 電, \uD83D\uDD0B");
        FindingRow standing = new FindingRow(FIRST, 1, "REBOUND", 5, OptionalLong.empty(), "{}");
        FindingRow cleared = new FindingRow(FIRST, 2, "WARMING", 6, OptionalLong.of(9), "{}");

        journal.openPassage(passage);
        journal.append(List.of(start, gap));
        journal.transition(transition);
        journal.finding(standing);
        journal.finding(cleared);
        journal.commitFacts();

        assertThat(reader.passages()).containsExactly(passage);
        assertThat(reader.passage(FIRST)).contains(passage);
        assertThat(reader.journal(FIRST)).containsExactly(start, gap);
        assertThat(reader.transitions(FIRST)).containsExactly(transition);
        assertThat(reader.findings(FIRST)).containsExactly(standing, cleared);
        assertThat(reader.passage(SECOND)).isEmpty();
        assertThat(reader.journal(SECOND)).isEmpty();
    }

    @Test
    void a_large_body_is_kept_whole() {
        String large = "ü".repeat(900_000);
        journal.openPassage(passage(FIRST));
        journal.append(new JournalRow(FIRST, 1, 0, 0, "procedure changed", large, WALL));
        journal.commitFacts();

        assertThat(reader.journal(FIRST).get(0).body()).isEqualTo(large);
    }

    @Test
    void a_character_that_not_every_database_can_hold_is_kept_as_one_that_stands_for_it() {
        journal.openPassage(passage(FIRST));
        journal.append(new JournalRow(FIRST, 1, 0, 0, "said", "before\0after", WALL));
        journal.commitFacts();

        assertThat(reader.journal(FIRST)).extracting(JournalRow::body).containsExactly("before\uFFFDafter");
    }

    @Test
    void rows_come_in_the_order_of_their_sequence_not_of_writing() {
        journal.openPassage(passage(SECOND));
        journal.openPassage(passage(FIRST));
        journal.append(List.of(entry(10, 0, "c"), entry(2, 0, "b"), entry(1, 0, "a")));
        journal.commitFacts();

        assertThat(reader.journal(FIRST)).extracting(JournalRow::kind).containsExactly("a", "b", "c");
        assertThat(reader.passages()).extracting(PassageRow::id).containsExactly(FIRST, SECOND);
    }

    @Test
    void a_closed_passage_is_no_longer_among_the_open_ones() {
        journal.openPassage(passage(FIRST));
        journal.openPassage(passage(SECOND));
        journal.commitFacts();
        PassageRow.Closing closing = new PassageRow.Closing(99, "released");

        journal.closePassage(FIRST, closing);
        journal.commitFacts();

        assertThat(reader.openPassages()).extracting(PassageRow::id).containsExactly(SECOND);
        assertThat(reader.passage(FIRST).orElseThrow().closing()).contains(closing);
    }

    @Test
    void a_finding_is_cleared_once() {
        journal.openPassage(passage(FIRST));
        journal.finding(new FindingRow(FIRST, 1, "SILENT", 5, OptionalLong.empty(), "{}"));
        journal.clearFinding(FIRST, 1, 8);
        journal.commitFacts();

        journal.clearFinding(FIRST, 1, 12);
        assertThatThrownBy(journal::commitFacts).isInstanceOf(StorageException.class);
        assertThat(reader.findings(FIRST).get(0).clearedEventMillis()).hasValue(8);
    }

    @Test
    void readings_are_made_durable_first_then_all_is_committed_then_forced() {
        journal.openPassage(passage(FIRST));
        journal.append(entry(1, 0, "a"));
        assertThat(reader.passages()).isEmpty();

        journal.commitFacts();

        assertThat(steps).containsExactly("readings durable, 0 entries committed", "forced, 1 entries committed");
        assertThat(journal.waiting()).isZero();
    }

    @Test
    void nothing_new_costs_nothing() {
        journal.commitFacts();

        assertThat(steps).isEmpty();
    }

    @Test
    void no_fact_is_committed_before_its_readings() {
        journal.openPassage(passage(FIRST));
        readingsFail = true;

        assertThatThrownBy(journal::commitFacts)
                .isInstanceOf(StorageException.class)
                .hasMessageContaining("disk full");
        assertThat(reader.passages()).isEmpty();

        readingsFail = false;
        journal.commitFacts();
        assertThat(reader.passages()).hasSize(1);
    }

    @Test
    void what_was_committed_but_not_forced_is_forced_the_next_time() {
        journal.openPassage(passage(FIRST));
        forceFails = true;
        assertThatThrownBy(journal::commitFacts).isInstanceOf(StorageException.class);

        forceFails = false;
        journal.commitFacts();

        assertThat(reader.passages()).hasSize(1);
        assertThat(steps).last().isEqualTo("forced, 0 entries committed");
    }

    @Test
    void a_change_that_can_never_be_stored_is_named_and_does_not_hold_up_the_others() {
        journal.openPassage(passage(FIRST));
        journal.append(entry(1, 0, "first"));
        journal.append(entry(1, 0, "same number"));
        journal.append(new JournalRow(SECOND, 1, 0, 0, "of nobody", "{}", WALL));
        journal.append(entry(2, 0, "x".repeat(81)));
        journal.append(entry(3, 0, "last"));

        assertThatThrownBy(journal::commitFacts)
                .isInstanceOf(StorageException.class)
                .hasMessageContainingAll("same number", "of nobody", "xxx");

        assertThat(reader.journal(FIRST)).extracting(JournalRow::kind).containsExactly("first", "last");
        assertThat(journal.waiting()).isZero();
    }

    @Test
    void a_passage_begins_open() {
        PassageRow closed = new PassageRow(
                FIRST, "A", "B", 0, 0, WALL, "", "", false, 1, Optional.of(new PassageRow.Closing(1, "")));

        assertThatThrownBy(() -> journal.openPassage(closed)).isInstanceOf(IllegalArgumentException.class);
    }

    private void flushReadings() {
        if (readingsFail) {
            throw new StorageException("disk full");
        }
        steps.add("readings durable, " + entries() + " entries committed");
    }

    private int entries() {
        return reader.journal(FIRST).size();
    }

    private static PassageRow passage(UUID id) {
        return new PassageRow(
                id, "tag \"1\"", "RIG-0001", 3, 7_000, WALL, "careful: ...", "NMC", true, 60, Optional.empty());
    }

    private static JournalRow entry(long sequence, long position, String kind) {
        return new JournalRow(FIRST, sequence, 1000 * sequence, position, kind, "{\"a\": 1}", WALL);
    }

    /** The database under test, with its forcing watched. */
    private final class Watched implements Database {

        @Override
        public DataSource dataSource() {
            return database.dataSource();
        }

        @Override
        public void force() throws SQLException {
            if (forceFails) {
                throw new SQLException("disk full");
            }
            database.force();
            steps.add("forced, " + entries() + " entries committed");
        }

        @Override
        public void close() {
            database.close();
        }
    }
}
