package org.ebbwatch.store;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * The morning reports that were sent. What is written waits for {@link JournalStore#commitFacts}, together with the messages that
 * carry it; what is read is what was committed. Thread-safe.
 */
public final class MorningTable {
    private final JournalStore journal;
    private final Database database;

    MorningTable(JournalStore journal, Database database) {
        this.journal = journal;
        this.database = database;
    }

    /** The report of a day, as ISO 8601 writes it; there is one for each. */
    public void insert(String day, String text, WallLabel written) {
        journal.change(
                "insert into morning_report (report_day, body, wall_millis, wall_quality) values (?, ?, ?, ?)",
                day,
                text,
                written.millis(),
                written.quality());
    }

    /**
     * The last day that has its report, as ISO 8601 writes it; later ones than {@code notAfter} were made by a clock that was
     * wrong.
     *
     * @throws StorageException if the database is away
     */
    public Optional<String> lastDay(String notAfter) {
        try {
            List<String> days = Rows.read(
                    database,
                    "select report_day from morning_report where report_day <= ? order by report_day desc fetch first row only",
                    row -> row.getString("report_day"),
                    notAfter);
            return days.stream().findFirst();
        } catch (SQLException e) {
            throw new StorageException("the morning reports cannot be read", e);
        }
    }
}
