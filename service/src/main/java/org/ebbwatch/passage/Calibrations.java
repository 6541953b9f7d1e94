package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.calibration.Meter;

/** Where people calibrate channels, one at a time, and see what was calibrated. Safe for use by several threads. */
public interface Calibrations {

    /**
     * Begins to calibrate a channel on which no cell is; the same key gives the same again while it runs.
     *
     * @param by who
     * @param key made by whoever asks
     */
    CalibrationReply beginCalibration(String board, int channel, Meter meter, String by, String key);

    /**
     * Takes a point from the last readings, which must be steady. One that was taken before is taken again, and all after it.
     *
     * @param shownVolts by the meter; of no account for shorted leads
     */
    CalibrationReply takePoint(UUID run, CalibrationSpot spot, double shownVolts);

    /** Keeps what was found; the channel goes by it from its next reading on. */
    CalibrationReply keepCalibration(UUID run);

    /** Ends a calibration without keeping anything. */
    CalibrationReply giveUpCalibration(UUID run);

    /** Withdraws a calibration that was kept and found wrong; the channel goes by the one before, or by the board's own scale. */
    CalibrationReply withdrawCalibration(UUID calibration, String by, String reason);

    /** The one under way. */
    Optional<CalibrationRun> calibrationRun();

    /** Every one that was kept, newest first. */
    List<KeptCalibration> calibrations();
}
