package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every database must do for alarms and messages. */
abstract class AlarmTableContract {
    private static final UUID FIRST = UUID.fromString("0193f0a0-0000-7000-8000-000000000001");
    private static final UUID SECOND = UUID.fromString("0193f0a0-0001-7000-8000-000000000000");
    private static final WallLabel WALL = new WallLabel(1_790_000_000_000L, "known");

    private Database database;
    private JournalStore journal;
    private AlarmTable alarms;
    private boolean readingsFail;

    /** An empty database; the contract closes it. */
    abstract Database open();

    @BeforeEach
    void openDatabase() {
        database = open();
        journal = new JournalStore(database, () -> {
            if (readingsFail) {
                throw new StorageException("disk full");
            }
        });
        alarms = journal.alarms();
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    private static AlarmRow row(UUID id, String state, boolean alive) {
        return new AlarmRow(id, "HOT", "passage 1", state, "NONE", alive, WALL, "{\"line\":\"µ 電 \uD83D\uDD0B\"}");
    }

    private static AlarmStepRow step(UUID alarm, long sequence) {
        return new AlarmStepRow(
                alarm, sequence, "RAISED", "NORMAL", "NONE", "UNACKNOWLEDGED", "NONE", "", "", 7_000, "Hot.", WALL);
    }

    private static AlarmStepRow raised(UUID alarm, long sequence, long wallMillis, String step) {
        var wall = new WallLabel(wallMillis, "known");
        return new AlarmStepRow(
                alarm, sequence, step, "NORMAL", "NONE", "UNACKNOWLEDGED", "NONE", "", "", 7_000, "Hot.", wall);
    }

    @Test
    void every_raising_since_a_time_is_found_oldest_first_whether_the_alarm_lives_or_not() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.insert(row(SECOND, "NORMAL", false));
        alarms.append(raised(SECOND, 1, 999, "RAISED"));
        alarms.append(raised(FIRST, 1, 2_000, "RAISED"));
        alarms.append(raised(SECOND, 2, 1_000, "RAISED"));
        alarms.append(raised(SECOND, 3, 1_500, "ACKNOWLEDGED"));
        journal.commitFacts();

        assertThat(alarms.raisedSince(1_000))
                .containsExactly(
                        new RaisedRow(SECOND, "HOT", "passage 1", "Hot.", 1_000),
                        new RaisedRow(FIRST, "HOT", "passage 1", "Hot.", 2_000));
    }

    @Test
    void a_message_may_be_about_no_alarm() {
        alarms.append(message(1, null, "webhook"));
        journal.commitFacts();

        assertThat(alarms.unsent("webhook")).containsExactly(message(1, null, "webhook"));
    }

    @Test
    void the_last_day_that_has_a_morning_report_is_known() {
        assertThat(journal.mornings().lastDay("2026-11-26")).isEmpty();
        journal.mornings().insert("2026-11-25", "calm µ", WALL);
        journal.mornings().insert("2026-09-30", "calm", WALL);
        assertThat(journal.mornings().lastDay("2026-11-26")).isEmpty();
        journal.commitFacts();

        assertThat(journal.mornings().lastDay("2026-11-26")).contains("2026-11-25");
        assertThat(journal.mornings().lastDay("2026-11-24"))
                .as("what a clock that was ahead has left does not count")
                .contains("2026-09-30");
    }

    private static OutboxRow message(long number, UUID alarm, String outlet) {
        return new OutboxRow(number, new UUID(7, number), alarm, outlet, number % 2 == 0, "{}", WALL);
    }

    @Test
    void what_was_written_is_read_back_as_it_was() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.append(step(FIRST, 1));
        alarms.append(step(FIRST, 2));
        alarms.append(message(1, FIRST, "webhook"));
        alarms.append(message(2, FIRST, "other"));
        alarms.append(message(3, FIRST, "webhook"));
        journal.commitFacts();

        assertThat(alarms.living()).containsExactly(row(FIRST, "UNACKNOWLEDGED", true));
        assertThat(alarms.steps(FIRST)).containsExactly(step(FIRST, 1), step(FIRST, 2));
        assertThat(alarms.unsent("webhook"))
                .containsExactly(message(1, FIRST, "webhook"), message(3, FIRST, "webhook"));
        assertThat(alarms.lastNumber()).isEqualTo(3);
    }

    @Test
    void an_empty_table_has_no_last_number() {
        assertThat(alarms.lastNumber()).isZero();
        assertThat(alarms.living()).isEmpty();
    }

    @Test
    void an_alarm_that_is_over_is_no_longer_living_and_makes_room_for_the_next() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.update(row(FIRST, "NORMAL", false));
        alarms.insert(row(SECOND, "UNACKNOWLEDGED", true));
        alarms.update(row(SECOND, "ACKNOWLEDGED", true));
        journal.commitFacts();

        assertThat(alarms.living()).containsExactly(row(SECOND, "ACKNOWLEDGED", true));
    }

    @Test
    void a_second_living_alarm_of_one_kind_and_subject_is_refused() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.insert(row(SECOND, "UNACKNOWLEDGED", true));

        assertThatThrownBy(journal::commitFacts)
                .isInstanceOf(StorageException.class)
                .hasMessageContaining(SECOND.toString());
        assertThat(alarms.living()).extracting(AlarmRow::id).containsExactly(FIRST);
    }

    @Test
    void a_message_that_was_sent_is_not_sent_again() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.append(message(1, FIRST, "webhook"));
        alarms.append(message(2, FIRST, "webhook"));
        alarms.sent(new UUID(7, 1), 5);
        journal.commitFacts();

        assertThat(alarms.unsent("webhook")).extracting(OutboxRow::number).containsExactly(2L);
        assertThat(alarms.lastNumber()).isEqualTo(2);
    }

    @Test
    void which_outlets_a_living_alarm_was_told_to_is_known_whether_it_was_sent_or_not() {
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.append(message(1, FIRST, "webhook"));
        alarms.append(message(2, FIRST, "mail"));
        alarms.append(message(3, FIRST, "mail"));
        alarms.sent(new UUID(7, 1), 5);
        journal.commitFacts();
        assertThat(alarms.told()).isEqualTo(Map.of(FIRST, Set.of("webhook", "mail")));

        alarms.update(row(FIRST, "NORMAL", false));
        journal.commitFacts();
        assertThat(alarms.told()).isEmpty();
    }

    @Test
    void alarms_and_the_facts_that_caused_them_are_stored_together_or_not_at_all() {
        journal.openPassage(
                new PassageRow(FIRST, "tag", "B", 0, 0, WALL, "procedure", "cell", false, 1, Optional.empty()));
        alarms.insert(row(FIRST, "UNACKNOWLEDGED", true));
        alarms.append(message(1, FIRST, "webhook"));
        readingsFail = true;
        assertThatThrownBy(journal::commitFacts).isInstanceOf(StorageException.class);
        assertThat(alarms.living()).isEmpty();
        assertThat(alarms.unsent("webhook")).isEmpty();
        assertThat(journal.reader().passages()).isEmpty();

        readingsFail = false;
        journal.commitFacts();
        assertThat(alarms.living()).hasSize(1);
        assertThat(alarms.unsent("webhook")).hasSize(1);
        assertThat(journal.reader().passages()).hasSize(1);
    }
}
