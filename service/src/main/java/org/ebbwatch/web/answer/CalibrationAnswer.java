package org.ebbwatch.web.answer;

import static org.ebbwatch.web.answer.CalibrationPointAnswer.fine;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.Correction;
import org.ebbwatch.passage.KeptCalibration;
import org.ebbwatch.passage.KeptCalibration.Withdrawal;

/**
 * A calibration of one channel.
 *
 * @param id by which it is asked for
 * @param serialNumber of the board
 * @param channel from 0
 * @param madeAt RFC 3339 in UTC
 * @param ageDays whole days since then
 * @param old whether it is older than twelve months and to be made anew
 * @param current whether the channel goes by it
 * @param applied false where the board's own scale was found to hold and stands
 * @param by who made it
 * @param meter with which
 * @param meterPercent of its reading, as its maker states its accuracy
 * @param meterVolts besides
 * @param shorted leads shorted
 * @param low about 0.5 V
 * @param high about 4 V
 * @param offsetVolts added to what the board reads times the gain
 * @param gain by which what the board reads is multiplied
 * @param residualVolts how far the point farthest off lies from that line
 * @param blindBelowVolts the doubt at shorted leads; 0 where the channel is straight down to 0 V
 * @param expandedVoltsAtZero expanded uncertainty (k = 2) at shorted leads, without the doubt of one count
 * @param expandedGain expanded uncertainty (k = 2) relative to the voltage
 * @param withdrawnAt RFC 3339 in UTC; null while it holds
 * @param withdrawnBy null while it holds
 * @param withdrawnReason null while it holds
 */
@Serdeable
public record CalibrationAnswer(
        String id,
        String serialNumber,
        int channel,
        @Nullable String madeAt,
        long ageDays,
        boolean old,
        boolean current,
        boolean applied,
        String by,
        String meter,
        double meterPercent,
        double meterVolts,
        CalibrationPointAnswer shorted,
        CalibrationPointAnswer low,
        CalibrationPointAnswer high,
        double offsetVolts,
        double gain,
        double residualVolts,
        double blindBelowVolts,
        double expandedVoltsAtZero,
        double expandedGain,
        @Nullable String withdrawnAt,
        @Nullable String withdrawnBy,
        @Nullable String withdrawnReason) {

    /** One that was kept. */
    public static CalibrationAnswer of(KeptCalibration kept, long nowWallMillis) {
        return of(kept.calibration(), kept.current(), kept.withdrawal().orElse(null), nowWallMillis);
    }

    /** One that was found and may be kept. */
    static CalibrationAnswer found(Calibration found, long nowWallMillis) {
        return of(found, false, null, nowWallMillis);
    }

    private static CalibrationAnswer of(
            Calibration made, boolean current, @Nullable Withdrawal withdrawal, long nowWallMillis) {
        Correction correction = made.correction();
        return new CalibrationAnswer(
                made.id(),
                made.serialNumber(),
                made.channel(),
                Figures.wallTime(made.madeWallMillis()),
                made.ageDays(nowWallMillis),
                made.isOld(nowWallMillis),
                current,
                made.applied(),
                made.by(),
                made.meter().name(),
                fine(100 * made.meter().share()),
                made.meter().volts(),
                CalibrationPointAnswer.of(made.shorted()),
                CalibrationPointAnswer.of(made.low()),
                CalibrationPointAnswer.of(made.high()),
                fine(correction.offsetVolts()),
                fine(correction.gain()),
                fine(made.residualVolts()),
                fine(correction.bottomVolts()),
                fine(correction.expandedOffsetVolts() + correction.bottomVolts()),
                fine(correction.expandedGain()),
                withdrawal == null ? null : Figures.wallTime(withdrawal.wallMillis()),
                withdrawal == null ? null : withdrawal.by(),
                withdrawal == null ? null : withdrawal.reason());
    }
}
