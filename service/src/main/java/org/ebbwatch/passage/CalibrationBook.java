package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.passage.KeptCalibration.Withdrawal;
import org.ebbwatch.store.CalibrationRow;
import org.ebbwatch.store.CalibrationTable;
import org.ebbwatch.store.WallLabel;

/** The calibrations of all boards that were ever here, in the order they were kept. Not thread-safe. */
final class CalibrationBook {
    private final CalibrationTable table;
    private final List<Entry> entries = new ArrayList<>();

    private record Entry(Calibration calibration, Optional<Withdrawal> withdrawal) {}

    CalibrationBook(CalibrationTable table) {
        this.table = table;
        table.all()
                .forEach(
                        row -> entries.add(new Entry(RecordJson.read(Calibration.class, row.body()), withdrawal(row))));
    }

    /** What the channels of a board go by, one each. */
    List<Calibration> of(String serialNumber) {
        Map<Integer, Calibration> newest = new LinkedHashMap<>();
        entries.stream()
                .filter(entry -> entry.withdrawal.isEmpty())
                .filter(entry -> entry.calibration.serialNumber().equals(serialNumber))
                .forEach(entry -> newest.put(entry.calibration.channel(), entry.calibration));
        return List.copyOf(newest.values());
    }

    void keep(Calibration calibration, String wallQuality) {
        entries.add(new Entry(calibration, Optional.empty()));
        table.insert(new CalibrationRow(
                UUID.fromString(calibration.id()),
                calibration.serialNumber(),
                calibration.channel(),
                new WallLabel(calibration.madeWallMillis(), wallQuality),
                RecordJson.write(calibration),
                Optional.empty()));
    }

    void withdraw(UUID id, Withdrawal withdrawal) {
        entries.replaceAll(entry -> entry.calibration.id().equals(id.toString())
                ? new Entry(entry.calibration, Optional.of(withdrawal))
                : entry);
        table.withdraw(
                id, new CalibrationRow.Withdrawal(withdrawal.wallMillis(), withdrawal.by(), withdrawal.reason()));
    }

    private static Optional<Withdrawal> withdrawal(CalibrationRow row) {
        return row.withdrawal().map(it -> new Withdrawal(it.wallMillis(), it.by(), it.reason()));
    }

    Optional<KeptCalibration> find(UUID id) {
        return newestFirst().stream()
                .filter(kept -> kept.calibration().id().equals(id.toString()))
                .findFirst();
    }

    List<KeptCalibration> newestFirst() {
        List<KeptCalibration> kept = new ArrayList<>();
        for (int i = entries.size() - 1; i >= 0; i--) {
            Entry entry = entries.get(i);
            boolean current = of(entry.calibration.serialNumber()).contains(entry.calibration);
            kept.add(new KeptCalibration(entry.calibration, entry.withdrawal, current));
        }
        return kept;
    }
}
