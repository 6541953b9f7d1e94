package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every database must do for receipts and for the count of runs. */
abstract class ReceiptTableContract {
    private static final UUID PASSAGE = UUID.fromString("0193f0a0-0000-7000-8000-000000000001");
    private static final UUID ALARM = UUID.fromString("0193f0a0-0000-7000-8000-000000000002");
    private static final WallLabel WALL = new WallLabel(1_790_000_000_000L, "host");

    private Database database;
    private JournalStore journal;
    private ReceiptTable receipts;
    private boolean readingsFail;

    /** A database that is empty when it is first opened; the contract closes it. */
    abstract Database open();

    @BeforeEach
    void openDatabase() {
        database = open();
        journal = new JournalStore(database, () -> {
            if (readingsFail) {
                throw new StorageException("disk full");
            }
        });
        receipts = journal.receipts();
        journal.openPassage(
                new PassageRow(PASSAGE, "A-17", "bench", 3, 1, WALL, "{}", "{}", false, 1, Optional.empty()));
        journal.commitFacts();
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    private static ReceiptRow receipt(String key) {
        return new ReceiptRow(key, "0f".repeat(32), PASSAGE, 17, "bench", 3, "DRAIN", "load put on, µ 電", WALL);
    }

    @Test
    void a_receipt_is_read_back_as_it_was() {
        receipts.insert(receipt("the first request"));
        journal.commitFacts();

        assertThat(receipts.find("the first request")).contains(receipt("the first request"));
        assertThat(receipts.find("the second request")).isEmpty();
    }

    @Test
    void a_receipt_is_stored_with_the_facts_it_is_about_or_not_at_all() {
        journal.transition(new TransitionRow(PASSAGE, 1, 5, "CHECK_IN", "DRAIN", "load put on"));
        receipts.insert(receipt("the first request"));
        readingsFail = true;
        assertThatThrownBy(journal::commitFacts).isInstanceOf(StorageException.class);

        assertThat(receipts.find("the first request")).isEmpty();
        assertThat(journal.reader().transitions(PASSAGE)).isEmpty();
        readingsFail = false;
        journal.commitFacts();
        assertThat(receipts.find("the first request")).isPresent();
        assertThat(journal.reader().transitions(PASSAGE)).hasSize(1);
    }

    @Test
    void a_key_has_one_receipt_and_a_second_one_holds_up_nothing_else() {
        receipts.insert(receipt("the first request"));
        journal.commitFacts();
        receipts.insert(receipt("the first request"));
        receipts.insert(receipt("the second request"));

        assertThatThrownBy(journal::commitFacts).hasMessageContaining("refused for ever");
        assertThat(receipts.find("the second request")).isPresent();
    }

    private static AlarmReceiptRow ofAlarm(String key) {
        return new AlarmReceiptRow(key, "0a".repeat(32), ALARM, 3, "HOT", "RESET", "NORMAL", "NONE", "Anna, µ 電", WALL);
    }

    private void anAlarmIsInTheBook() {
        journal.alarms().insert(new AlarmRow(ALARM, "HOT", "board bench", "UNACKNOWLEDGED", "NONE", true, WALL, "{}"));
    }

    @Test
    void a_receipt_about_an_alarm_is_read_back_as_it_was_and_never_as_one_about_a_passage() {
        anAlarmIsInTheBook();
        receipts.insert(ofAlarm("the first request"));
        journal.commitFacts();

        assertThat(receipts.findOfAlarm("the first request")).contains(ofAlarm("the first request"));
        assertThat(receipts.findOfAlarm("the second request")).isEmpty();
        assertThat(receipts.find("the first request")).isEmpty();
    }

    @Test
    void receipts_of_both_sorts_are_forgotten_when_they_are_older_and_kept_when_they_are_not() {
        anAlarmIsInTheBook();
        receipts.insert(receipt("the first request"));
        receipts.insert(ofAlarm("the second request"));
        journal.commitFacts();

        assertThat(receipts.forgetBefore(WALL.millis())).isZero();
        assertThat(receipts.find("the first request")).isPresent();
        assertThat(receipts.findOfAlarm("the second request")).isPresent();

        assertThat(receipts.forgetBefore(WALL.millis() + 1)).isEqualTo(2);
        assertThat(receipts.find("the first request")).isEmpty();
        assertThat(receipts.findOfAlarm("the second request")).isEmpty();
    }

    @Test
    void runs_are_counted_and_no_number_is_given_twice() {
        long first = journal.beginRun(1);
        long second = journal.beginRun(1);
        database.close();
        database = open();
        long third = new JournalStore(database, () -> {}).beginRun(0);

        assertThat(first).isPositive();
        assertThat(second).isGreaterThan(first);
        assertThat(third).isGreaterThan(second);
    }
}
