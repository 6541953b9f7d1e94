package org.ebbwatch.passage;

import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.judge.Entry;

/** The journal's text form of entries other than scans: a kind, which is the record's name, and a JSON body. */
public final class EntryJson {
    private static final Map<String, Class<? extends Record>> KINDS = kinds();

    private EntryJson() {}

    public static String kind(Entry entry) {
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
        return (Entry) RecordJson.read(type(kind), body);
    }

    /**
     * Makes an entry of what its JSON body holds.
     *
     * @throws IllegalArgumentException if kind or body are not those of an entry
     */
    public static Entry fromMap(String kind, Map<?, ?> body) {
        return (Entry) RecordJson.fromMap(type(kind), body);
    }

    private static Class<? extends Record> type(String kind) {
        Class<? extends Record> type = KINDS.get(kind);
        if (type == null) {
            throw new IllegalArgumentException("the journal of this version knows no entry " + kind);
        }
        return type;
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
