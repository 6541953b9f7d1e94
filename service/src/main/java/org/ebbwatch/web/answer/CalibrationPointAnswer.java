package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.Objects;
import org.ebbwatch.calibration.CalibrationPoint;

/**
 * A channel held against a known voltage.
 *
 * @param shownVolts by the meter; 0 where the leads were shorted
 * @param readVolts by the board, by its own scale
 * @param deviationVolts standard deviation of one reading
 */
@Serdeable
public record CalibrationPointAnswer(double shownVolts, double readVolts, double deviationVolts) {
    @Nullable static CalibrationPointAnswer of(@Nullable CalibrationPoint point) {
        return point == null
                ? null
                : new CalibrationPointAnswer(point.shownVolts(), fine(point.readVolts()), fine(point.deviationVolts()));
    }

    static double fine(double number) {
        return Objects.requireNonNull(Figures.fine(number));
    }
}
