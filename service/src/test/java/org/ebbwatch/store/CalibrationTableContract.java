package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.store.CalibrationRow.Withdrawal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every database must do for calibrations. */
abstract class CalibrationTableContract {
    private static final Withdrawal WITHDRAWAL = new Withdrawal(1_790_000_900_000L, "Ben", "wrong range, µV");

    private Database database;
    private JournalStore journal;
    private CalibrationTable calibrations;

    /** A database that is empty when it is first opened; the contract closes it. */
    abstract Database open();

    @BeforeEach
    void openDatabase() {
        database = open();
        journal = new JournalStore(database, () -> {});
        calibrations = journal.calibrations();
    }

    @AfterEach
    void closeDatabase() {
        database.close();
    }

    /** The later one has the earlier label: a wall clock may step back. */
    private static CalibrationRow row(int number) {
        return new CalibrationRow(
                new UUID(0x7000, 100 - number),
                "EB-0001",
                3,
                new WallLabel(1_790_000_000_000L - number, "known"),
                "{\"by\": \"Anna Å\"}",
                Optional.empty());
    }

    @Test
    void they_are_read_back_as_they_were_in_the_order_they_were_kept() {
        calibrations.insert(row(1));
        calibrations.insert(row(2));
        journal.commitFacts();
        assertThat(calibrations.all()).containsExactly(row(1), row(2));
    }

    @Test
    void nothing_is_there_before_it_is_committed() {
        calibrations.insert(row(1));
        assertThat(calibrations.all()).isEmpty();
    }

    @Test
    void one_that_is_withdrawn_stays_with_who_when_and_why() {
        calibrations.insert(row(1));
        calibrations.withdraw(row(1).id(), WITHDRAWAL);
        journal.commitFacts();
        assertThat(calibrations.all())
                .singleElement()
                .extracting(CalibrationRow::withdrawal)
                .isEqualTo(Optional.of(WITHDRAWAL));
    }

    @Test
    void one_that_is_not_there_cannot_be_withdrawn() {
        calibrations.withdraw(row(1).id(), WITHDRAWAL);
        assertThatThrownBy(journal::commitFacts).isInstanceOf(StorageException.class);
    }
}
