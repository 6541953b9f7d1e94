package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.passage.RestPrediction;

/**
 * What a resting cell's voltage is expected to be at the end of its rest. No verdict hangs on it: it passes no cell.
 *
 * @param eventMillis event time of that end, if nothing starts the rest anew
 * @param medianVolts as likely above as below
 * @param lowestVolts with highestVolts an interval that holds in 95 of 100 cases
 * @param highestVolts its upper end
 */
@Serdeable
public record RestPredictionAnswer(
        long eventMillis, @Nullable Double medianVolts, @Nullable Double lowestVolts, @Nullable Double highestVolts) {

    static RestPredictionAnswer of(RestPrediction prediction) {
        return new RestPredictionAnswer(
                prediction.eventMillis(),
                Figures.fine(prediction.medianVolts()),
                Figures.fine(prediction.lowestVolts()),
                Figures.fine(prediction.highestVolts()));
    }
}
