package org.ebbwatch.store;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Changes that are committed together.
 *
 * @param number from 1, rising by one from one batch to the next
 */
record FactBatch(long number, List<Change> changes) {
    private static final int NOTHING = 0;
    private static final int TEXT = 1;
    private static final int NUMBER = 2;
    private static final int LONG_NUMBER = 3;
    private static final int TRUTH = 4;
    private static final int IDENTIFIER = 5;

    FactBatch {
        changes = List.copyOf(changes);
    }

    void write(DataOutputStream out) throws IOException {
        out.writeLong(number);
        out.writeInt(changes.size());
        for (Change change : changes) {
            writeText(change.sql(), out);
            out.writeInt(change.values().length);
            for (Object value : change.values()) {
                writeValue(value, out);
            }
        }
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IOException if it is something else
     */
    static FactBatch read(DataInputStream in) throws IOException {
        long number = in.readLong();
        int count = in.readInt();
        List<Change> changes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String sql = readText(in);
            Object[] values = new Object[in.readInt()];
            for (int j = 0; j < values.length; j++) {
                values[j] = readValue(in);
            }
            changes.add(new Change(sql, values));
        }
        return new FactBatch(number, changes);
    }

    private static void writeValue(Object value, DataOutputStream out) throws IOException {
        if (value == null) {
            out.writeByte(NOTHING);
        } else if (value instanceof String text) {
            out.writeByte(TEXT);
            writeText(text, out);
        } else if (value instanceof Integer whole) {
            out.writeByte(NUMBER);
            out.writeInt(whole);
        } else if (value instanceof Long whole) {
            out.writeByte(LONG_NUMBER);
            out.writeLong(whole);
        } else if (value instanceof Boolean truth) {
            out.writeByte(TRUTH);
            out.writeBoolean(truth);
        } else if (value instanceof UUID id) {
            out.writeByte(IDENTIFIER);
            out.writeLong(id.getMostSignificantBits());
            out.writeLong(id.getLeastSignificantBits());
        } else {
            throw new IllegalArgumentException("no such value can wait: " + value.getClass());
        }
    }

    private static Object readValue(DataInputStream in) throws IOException {
        int sort = in.readByte();
        return switch (sort) {
            case NOTHING -> null;
            case TEXT -> readText(in);
            case NUMBER -> in.readInt();
            case LONG_NUMBER -> in.readLong();
            case TRUTH -> in.readBoolean();
            case IDENTIFIER -> new UUID(in.readLong(), in.readLong());
            default -> throw new IOException("no value begins with " + sort);
        };
    }

    private static void writeText(String text, DataOutputStream out) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static String readText(DataInputStream in) throws IOException {
        return new String(in.readNBytes(in.readInt()), StandardCharsets.UTF_8);
    }
}
