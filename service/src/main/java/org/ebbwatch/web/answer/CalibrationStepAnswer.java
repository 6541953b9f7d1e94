package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.passage.CalibrationRun;
import org.ebbwatch.passage.KeptCalibration;

/**
 * What came of a step; both are null where it was given up.
 *
 * @param running the calibration as it stands now; null once it is over
 * @param kept what was kept, or withdrawn; null before
 */
@Serdeable
public record CalibrationStepAnswer(@Nullable CalibrationRunAnswer running, @Nullable CalibrationAnswer kept) {
    /** Nothing was kept. */
    public static final CalibrationStepAnswer GIVEN_UP = new CalibrationStepAnswer(null, null);

    public static CalibrationStepAnswer of(CalibrationRun run, long nowWallMillis) {
        return new CalibrationStepAnswer(CalibrationRunAnswer.of(run, nowWallMillis), null);
    }

    public static CalibrationStepAnswer of(KeptCalibration kept, long nowWallMillis) {
        return new CalibrationStepAnswer(null, CalibrationAnswer.of(kept, nowWallMillis));
    }
}
