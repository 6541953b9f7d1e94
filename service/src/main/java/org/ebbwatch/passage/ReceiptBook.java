package org.ebbwatch.passage;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.store.ReceiptRow;
import org.ebbwatch.store.ReceiptTable;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The receipts of what was done, by the keys they were asked for with: all of them in the records, the latest thousand in memory
 * too, so that a repetition is recognised while the records are away.
 */
final class ReceiptBook {
    private static final int IN_MEMORY = 1_000;
    private static final String WALL_QUALITY = "host";

    private final ReceiptTable table;
    private final Map<String, ReceiptRow> latest = new LinkedHashMap<>();

    ReceiptBook(ReceiptTable table) {
        this.table = table;
    }

    /**
     * What was done for this key before: its receipt, or that the key was used for another request.
     *
     * @param onDisk whether nothing waits to be written
     */
    Optional<DeskAnswer> find(String key, DeskRequest request, boolean onDisk) {
        return row(key).<DeskAnswer>map(row -> row.requestHash().equals(hash(request))
                        ? new DeskAnswer.Done(receipt(row), onDisk)
                        : new DeskAnswer.KeyUsed(key))
                .or(() -> isOfAnAlarm(key) ? Optional.of(new DeskAnswer.KeyUsed(key)) : Optional.empty());
    }

    private boolean isOfAnAlarm(String key) {
        try {
            return table.findOfAlarm(key).isPresent();
        } catch (StorageException e) {
            // Nothing is done twice for it: this request is about a passage, that one was about an alarm.
            return false;
        }
    }

    private Optional<ReceiptRow> row(String key) {
        ReceiptRow remembered = latest.get(key);
        if (remembered != null) {
            return Optional.of(remembered);
        }
        try {
            return table.find(key);
        } catch (StorageException e) {
            // Nothing is done twice for it: a repetition has seen a sequence that is no longer the passage's.
            return Optional.empty();
        }
    }

    /** Writes a receipt down; it lasts with the journal. */
    void keep(String key, DeskRequest request, Receipt receipt, long wallMillis) {
        ReceiptRow row = new ReceiptRow(
                key,
                hash(request),
                receipt.passage(),
                receipt.sequence(),
                receipt.board(),
                receipt.channel(),
                receipt.phase().name(),
                receipt.reason(),
                new WallLabel(wallMillis, WALL_QUALITY));
        table.insert(row);
        latest.put(key, row);
        if (latest.size() > IN_MEMORY) {
            latest.remove(latest.keySet().iterator().next());
        }
    }

    private static Receipt receipt(ReceiptRow row) {
        return new Receipt(
                row.passage(), row.sequence(), row.board(), row.channel(), Phase.valueOf(row.phase()), row.reason());
    }

    private static String hash(DeskRequest request) {
        return Sha256.of(request.text()).toString();
    }
}
