package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.passage.Calibrations;

/**
 * What was calibrated.
 *
 * @param running the one under way; null where there is none
 * @param calibrations all that were ever kept, newest first
 */
@Serdeable
public record CalibrationsAnswer(@Nullable CalibrationRunAnswer running, List<CalibrationAnswer> calibrations) {

    public static CalibrationsAnswer of(Calibrations source, long nowWallMillis) {
        return new CalibrationsAnswer(
                source.calibrationRun()
                        .map(run -> CalibrationRunAnswer.of(run, nowWallMillis))
                        .orElse(null),
                source.calibrations().stream()
                        .map(kept -> CalibrationAnswer.of(kept, nowWallMillis))
                        .toList());
    }
}
