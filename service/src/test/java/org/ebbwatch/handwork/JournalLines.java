package org.ebbwatch.handwork;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;

/** The entries of a journal that are no readings, one line each. */
final class JournalLines implements JournalTaker {
    private final List<String> lines = new ArrayList<>();

    @Override
    public boolean scan(long sequence, Entry.Scan scan) {
        return true;
    }

    @Override
    public boolean entry(long sequence, KeptEntry kept) {
        lines.add(kept.entry().toString());
        return true;
    }

    List<String> lines() {
        return lines;
    }
}
