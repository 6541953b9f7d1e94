package org.ebbwatch.passage;

import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.judge.Entry;

/** The journal's text form of entries other than scans: a kind, which is the record's name, and a JSON body. */
final class EntryJson {
    private static final Map<String, Class<? extends Record>> KINDS = kinds();

    private EntryJson() {}

    static String kind(Entry entry) {
        return entry.getClass().getSimpleName();
    }

    /** The body of an entry that is not a scan. */
    static String body(Entry entry) {
        if (!KINDS.containsKey(kind(entry))) {
            throw new IllegalArgumentException("scans are kept by the trace, not by the journal");
        }
        return RecordJson.write((Record) entry);
    }

    /**
     * Reads an entry.
     *
     * @throws IllegalArgumentException if kind or body are not those of an entry
     */
    static Entry read(String kind, String body) {
        Class<? extends Record> type = KINDS.get(kind);
        if (type == null) {
            throw new IllegalArgumentException("the journal of this version knows no entry " + kind);
        }
        return (Entry) RecordJson.read(type, body);
    }

    private static Map<String, Class<? extends Record>> kinds() {
        Map<String, Class<? extends Record>> kinds = new LinkedHashMap<>();
        for (Class<?> type : Entry.class.getPermittedSubclasses()) {
            if (type != Entry.Scan.class) {
                kinds.put(type.getSimpleName(), type.asSubclass(Record.class));
            }
        }
        return kinds;
    }
}
