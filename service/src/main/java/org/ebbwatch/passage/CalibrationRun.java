package org.ebbwatch.passage;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.CalibrationPoint;
import org.ebbwatch.calibration.Meter;

/**
 * A calibration under way.
 *
 * @param by who calibrates
 * @param awaits the point to be taken next; empty where all three are taken and it is to be kept or given up
 * @param readings how many of the readings a point needs have come since the last one
 * @param readVolts what the board reads now by its own scale; NaN where nothing to believe
 * @param points taken so far
 * @param found what follows from the three; empty before
 */
public record CalibrationRun(
        UUID id,
        String board,
        String serialNumber,
        int channel,
        String by,
        Meter meter,
        Optional<CalibrationSpot> awaits,
        int readings,
        double readVolts,
        Map<CalibrationSpot, CalibrationPoint> points,
        Optional<Calibration> found) {
    public CalibrationRun {
        points = Map.copyOf(points);
    }
}
