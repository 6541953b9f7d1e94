package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.util.Iterator;
import java.util.Optional;
import org.ebbwatch.evidence.container.DamageException;

/** Judges what a bundle holds: the readings of its trace and the entries of its record, put in order by their sequence. */
final class JudgingAgain {
    private final BundleRecord record;
    private final ChainCheck chain;
    private Optional<String> firstUtc = Optional.empty();
    private Optional<String> lastUtc = Optional.empty();

    JudgingAgain(BundleRecord record, ChainCheck chain) {
        this.record = record;
        this.chain = chain;
    }

    /**
     * The first thing that this judge makes otherwise than the record has it; empty: nothing.
     *
     * @throws DamageException if trace and record do not make one journal, or hold what this judge cannot judge
     */
    Optional<String> difference(InputStream trace) throws IOException {
        Folding folding = begin();
        Iterator<BundleRecord.Line> lines = record.journal().iterator();
        BundleRecord.Line line = lines.hasNext() ? lines.next() : null;
        var rows = new TraceCsvReader(trace);
        Optional<TraceCsvReader.Row> row = rows.next();
        for (long sequence = 1; line != null || row.isPresent(); sequence++) {
            if (line != null && line.sequence() == sequence) {
                take(folding, line);
                line = lines.hasNext() ? lines.next() : null;
            } else if (row.isPresent() && row.get().sequence() == sequence) {
                take(folding, row.get());
                row = rows.next();
            } else {
                throw new DamageException(
                        row.isPresent() ? TraceCsv.PATH : RecordWriter.PATH,
                        "nothing has the sequence number " + sequence + ", or not in order");
            }
        }
        return folding.verdict()
                .differenceFrom(record.verdict())
                .or(() -> difference("the highest voltage of the rest", folding.restPeak(), record.restPeak()))
                .or(() -> difference("the soak", folding.soak(), record.soak()));
    }

    /** Records made before there was such a thing have none. */
    private static Optional<String> difference(
            String what, Optional<? extends Record> here, Optional<? extends Record> there) {
        return there.isEmpty() || there.equals(here)
                ? Optional.empty()
                : Optional.of(
                        what + " is " + here.map(Record::toString).orElse("none") + ", the record has " + there.get());
    }

    private Folding begin() throws DamageException {
        try {
            return new Folding(record.cell(), record.procedure());
        } catch (IllegalArgumentException e) {
            throw new DamageException(RecordWriter.PATH, e.getMessage());
        }
    }

    private static void take(Folding folding, BundleRecord.Line line) throws DamageException {
        try {
            folding.take(line.sequence(), line.entry());
        } catch (IllegalArgumentException e) {
            throw new DamageException(RecordWriter.PATH, "entry " + line.sequence() + ": " + e.getMessage());
        }
    }

    private void take(Folding folding, TraceCsvReader.Row row) throws DamageException {
        try {
            folding.take(row.sequence(), row.scan());
        } catch (IllegalArgumentException e) {
            throw new DamageException(TraceCsv.PATH, "reading " + row.sequence() + ": " + e.getMessage());
        }
        chain.row(row.scan().eventMillis());
        if (firstUtc.isEmpty()) {
            firstUtc = Optional.of(row.wallUtc());
        }
        lastUtc = Optional.of(row.wallUtc());
    }

    /** Label of the first reading. */
    Optional<String> firstUtc() {
        return firstUtc;
    }

    /** Label of the last reading. */
    Optional<String> lastUtc() {
        return lastUtc;
    }
}
