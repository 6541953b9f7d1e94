package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.rig.message.ChannelRole;

/**
 * One channel's latest reading. It is as old as its board's last scan.
 *
 * @param board the board it belongs to
 * @param channel its number, from 0
 * @param role what it is wired to
 * @param volts null where there is none to believe
 * @param expandedVolts expanded uncertainty of the volts (k = 2)
 * @param celsius null where there is none to believe
 * @param overAmbientKelvin how much warmer than the board's ambient sensor; null where either is missing
 * @param amperes discharge positive; null where not measured
 * @param loadApplied whether the load is on
 * @param passageId the passage that is on it now; null where there is none
 * @param calibratedAt when it was calibrated, RFC 3339 in UTC; null where it never was
 * @param calibrationOld whether that is more than twelve months ago, so that it is to be calibrated anew
 */
@Serdeable
public record ChannelAnswer(
        String board,
        int channel,
        ChannelRole role,
        @Nullable Double volts,
        @Nullable Double expandedVolts,
        @Nullable Double celsius,
        @Nullable Double overAmbientKelvin,
        @Nullable Double amperes,
        boolean loadApplied,
        @Nullable UUID passageId,
        @Nullable String calibratedAt,
        boolean calibrationOld) {

    static ChannelAnswer of(ChannelView channel, double ambientCelsius, @Nullable UUID passageId, long nowWallMillis) {
        boolean air = channel.role() == ChannelRole.AMBIENT;
        return new ChannelAnswer(
                channel.board(),
                channel.channel(),
                channel.role(),
                Figures.fine(channel.volts()),
                Figures.fine(channel.expandedVolts()),
                Figures.coarse(channel.celsius()),
                air ? null : Figures.coarse(channel.celsius() - ambientCelsius),
                Figures.fine(channel.amperes()),
                channel.loadApplied(),
                passageId,
                Figures.wallTime(channel.calibratedWallMillis().orElse(0)),
                channel.isCalibrationOld(nowWallMillis));
    }
}
