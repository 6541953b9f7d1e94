package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.calibration.CalibrationPoint;
import org.ebbwatch.passage.CalibrationRun;
import org.ebbwatch.passage.CalibrationSpot;

/**
 * A calibration under way.
 *
 * @param id by which steps are asked for
 * @param board its name on this rack
 * @param serialNumber of the board
 * @param channel from 0
 * @param by who calibrates
 * @param awaits the point to be taken next; null where all are taken and it is to be kept or given up
 * @param readings how many steady readings have come for it
 * @param readingsNeeded how many it takes
 * @param readVolts what the board reads now, by its own scale; null where nothing to believe
 * @param shorted null before it was taken
 * @param low null before it was taken
 * @param high null before it was taken
 * @param found what follows from the three; null before
 */
@Serdeable
public record CalibrationRunAnswer(
        UUID id,
        String board,
        String serialNumber,
        int channel,
        String by,
        @Nullable CalibrationSpot awaits,
        int readings,
        int readingsNeeded,
        @Nullable Double readVolts,
        @Nullable CalibrationPointAnswer shorted,
        @Nullable CalibrationPointAnswer low,
        @Nullable CalibrationPointAnswer high,
        @Nullable CalibrationAnswer found) {

    static CalibrationRunAnswer of(CalibrationRun run, long nowWallMillis) {
        return new CalibrationRunAnswer(
                run.id(),
                run.board(),
                run.serialNumber(),
                run.channel(),
                run.by(),
                run.awaits().orElse(null),
                run.readings(),
                CalibrationPoint.READINGS,
                Figures.fine(run.readVolts()),
                CalibrationPointAnswer.of(run.points().get(CalibrationSpot.SHORTED)),
                CalibrationPointAnswer.of(run.points().get(CalibrationSpot.LOW)),
                CalibrationPointAnswer.of(run.points().get(CalibrationSpot.HIGH)),
                run.found()
                        .map(found -> CalibrationAnswer.found(found, nowWallMillis))
                        .orElse(null));
    }
}
