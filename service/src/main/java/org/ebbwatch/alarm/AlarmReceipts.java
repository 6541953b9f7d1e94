package org.ebbwatch.alarm;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.store.AlarmReceiptRow;
import org.ebbwatch.store.ReceiptTable;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The receipts of what was done about alarms, by the keys it was asked for with: those of the last weeks in the records, the latest
 * thousand in memory too, so that a repetition is recognised while the records are away.
 */
final class AlarmReceipts {
    private static final int IN_MEMORY = 1_000;
    private static final String WALL_QUALITY = "host";

    private final ReceiptTable table;
    private final Map<String, AlarmReceiptRow> latest = new LinkedHashMap<>();

    AlarmReceipts(ReceiptTable table) {
        this.table = table;
    }

    /**
     * What was done for this key before: its receipt, or that the key was used for another request.
     *
     * @param onDisk whether nothing waits to be written
     */
    Optional<AlarmReply> find(String key, AlarmRequest request, boolean onDisk) {
        AlarmReceiptRow remembered = latest.get(key);
        if (remembered != null) {
            return Optional.of(again(remembered, request, onDisk));
        }
        try {
            Optional<AlarmReceiptRow> row = table.findOfAlarm(key);
            if (row.isPresent()) {
                return Optional.of(again(row.get(), request, onDisk));
            }
            return table.find(key).map(ofPassage -> new AlarmReply.KeyUsed(key));
        } catch (StorageException e) {
            // Nothing is done twice for it: a repetition has seen a sequence that is no longer the alarm's.
            return Optional.empty();
        }
    }

    /** What was done for this key before; empty where nothing was, or where nobody can tell because the records are away. */
    Optional<AlarmReceipt> find(String key) {
        AlarmReceiptRow remembered = latest.get(key);
        if (remembered != null) {
            return Optional.of(receipt(remembered));
        }
        try {
            return table.findOfAlarm(key).map(AlarmReceipts::receipt);
        } catch (StorageException e) {
            return Optional.empty();
        }
    }

    private static AlarmReply again(AlarmReceiptRow row, AlarmRequest request, boolean onDisk) {
        return row.requestHash().equals(hash(request))
                ? new AlarmReply.Done(receipt(row), onDisk)
                : new AlarmReply.KeyUsed(row.key());
    }

    /** Writes a receipt down; it lasts with the step. */
    void keep(String key, AlarmRequest request, AlarmReceipt receipt, long wallMillis) {
        var row = new AlarmReceiptRow(
                key,
                hash(request),
                receipt.alarm(),
                receipt.sequence(),
                receipt.kind().name(),
                receipt.step().name(),
                receipt.state().name(),
                receipt.cover().name(),
                receipt.by(),
                new WallLabel(wallMillis, WALL_QUALITY));
        table.insert(row);
        latest.put(key, row);
        if (latest.size() > IN_MEMORY) {
            latest.remove(latest.keySet().iterator().next());
        }
    }

    private static AlarmReceipt receipt(AlarmReceiptRow row) {
        return new AlarmReceipt(
                row.alarm(),
                row.sequence(),
                AlarmKind.valueOf(row.kind()),
                AlarmStep.valueOf(row.step()),
                AlarmState.valueOf(row.state()),
                Cover.valueOf(row.cover()),
                row.who());
    }

    private static String hash(AlarmRequest request) {
        return Sha256.of(request.text()).toString();
    }
}
