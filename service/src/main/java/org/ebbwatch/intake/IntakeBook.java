package org.ebbwatch.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.intake.IntakeRecord.Revision;
import org.ebbwatch.intake.photo.PhotoType;
import org.ebbwatch.store.IntakeRow;
import org.ebbwatch.store.IntakeTable;

/**
 * All cards, in memory and in the records. In memory they are a few hundred bytes each, so that whether a cell may be checked in can
 * be told while the records are away. Thread-safe.
 */
public final class IntakeBook implements IntakeRecords {
    private final IntakeTable table;
    private final Map<String, IntakeRecord> byTag = new LinkedHashMap<>();
    private final Map<String, IntakeRow> byKey = new HashMap<>();

    private IntakeBook(IntakeTable table) {
        this.table = table;
    }

    /**
     * The cards of these records.
     *
     * @throws org.ebbwatch.store.StorageException if they cannot be read
     */
    public static IntakeBook of(IntakeTable table) {
        var book = new IntakeBook(table);
        table.all().forEach(book::remember);
        return book;
    }

    /**
     * Writes a revision down. While the disk is busy with it the cards can be read: a check-in does not wait for a photo.
     *
     * @throws org.ebbwatch.store.StorageException if it cannot; then nothing has changed
     */
    IntakeRecord write(IntakeRow row, Optional<IntakeRow.Photo> photo) {
        table.insert(row, photo);
        return remember(row);
    }

    private synchronized IntakeRecord remember(IntakeRow row) {
        var revision = new Revision(
                row.revision(),
                IntakeJson.read(row.body()),
                row.writtenBy(),
                row.reason(),
                row.wall().millis());
        byKey.put(row.key(), row);
        return byTag.merge(row.tag(), new IntakeRecord(row.tag(), List.of(revision)), IntakeBook::joined);
    }

    private static IntakeRecord joined(IntakeRecord earlier, IntakeRecord later) {
        List<Revision> revisions = new ArrayList<>(earlier.revisions());
        revisions.addAll(later.revisions());
        return new IntakeRecord(earlier.tag(), revisions);
    }

    /** What the request with this key wrote. */
    synchronized Optional<IntakeRow> writtenBy(String key) {
        return Optional.ofNullable(byKey.get(key));
    }

    @Override
    public synchronized Optional<IntakeRecord> tagged(String tag) {
        return Optional.ofNullable(byTag.get(tag));
    }

    @Override
    public synchronized List<IntakeRecord> latest() {
        List<IntakeRecord> all = new ArrayList<>(byTag.values());
        Collections.reverse(all);
        return all;
    }

    @Override
    public Optional<CellPhoto> photo(IntakeRecord record) {
        return record.photo()
                .flatMap(sha256 -> table.photo(record.tag(), sha256))
                .map(photo -> new CellPhoto(type(photo.mediaType()), photo.content()));
    }

    private static PhotoType type(String mediaType) {
        return Arrays.stream(PhotoType.values())
                .filter(type -> type.mediaType().equals(mediaType))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no photo is " + mediaType));
    }
}
