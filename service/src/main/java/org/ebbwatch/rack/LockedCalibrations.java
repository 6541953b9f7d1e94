package org.ebbwatch.rack;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.passage.CalibrationReply;
import org.ebbwatch.passage.CalibrationRun;
import org.ebbwatch.passage.CalibrationSpot;
import org.ebbwatch.passage.Calibrations;
import org.ebbwatch.passage.KeptCalibration;

/** Calibrations under the rack's lock. */
record LockedCalibrations(Calibrations desk, RackLock lock) implements Calibrations {
    @Override
    public CalibrationReply beginCalibration(String board, int channel, Meter meter, String by, String key) {
        return lock.call(() -> desk.beginCalibration(board, channel, meter, by, key));
    }

    @Override
    public CalibrationReply takePoint(UUID run, CalibrationSpot spot, double shownVolts) {
        return lock.call(() -> desk.takePoint(run, spot, shownVolts));
    }

    @Override
    public CalibrationReply keepCalibration(UUID run) {
        return lock.call(() -> desk.keepCalibration(run));
    }

    @Override
    public CalibrationReply giveUpCalibration(UUID run) {
        return lock.call(() -> desk.giveUpCalibration(run));
    }

    @Override
    public CalibrationReply withdrawCalibration(UUID calibration, String by, String reason) {
        return lock.call(() -> desk.withdrawCalibration(calibration, by, reason));
    }

    @Override
    public Optional<CalibrationRun> calibrationRun() {
        return lock.call(desk::calibrationRun);
    }

    @Override
    public List<KeptCalibration> calibrations() {
        return lock.call(desk::calibrations);
    }
}
