package org.ebbwatch.evidence;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import org.ebbwatch.evidence.Telling.Calibration;
import org.ebbwatch.passage.BasisText;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.IdentityText;
import org.ebbwatch.passage.RecordJson;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Identity;

/** What readings rest on, as the record has it: the board's scales, uncertainties and channels, and what is known beyond. */
final class CalibrationText {
    /**
     * How U follows from what a board states, or a calibration found; see {@link org.ebbwatch.calibration.BoardScale} and
     * {@link org.ebbwatch.calibration.Correction}.
     */
    static final String UNCERTAINTY =
            "U = sqrt(o^2 + (g V)^2 + (2 r / sqrt 12)^2), k = 2: o offset, g gain, r the volts of one count, as the board"
                    + " states them; one count taken as a rectangular distribution (JCGM 100). Where a calibration is applied,"
                    + " V = offsetVolts + gain x what the board reads, o and g are its own, and below straightVolts U is larger by"
                    + " bottomVolts (straightVolts - V) / (straightVolts - lowestVolts), at most bottomVolts. Where leads take a share"
                    + " of the load's voltage, it is added in squares while the load is on";

    static final String SENSORS =
            "The board converts its temperature sensors itself and sends temperatures; which sensors and by which"
                    + " coefficients it does not say.";

    private CalibrationText() {}

    static Map<String, Object> of(Calibration calibration) {
        Identity identity = calibration.board().identity();
        BoardBasis basis = calibration.board().basis();
        int channel = calibration.board().channel();
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("fromSequence", calibration.fromSequence());
        map.put("fromEventMillis", calibration.fromEventMillis());
        map.put("board", calibration.board().board());
        map.put("serialNumber", identity.serialNumber());
        map.put("firmware", identity.firmware());
        map.put("bootNumber", calibration.board().bootNumber());
        map.put("simulated", identity.simulated());
        map.put("speed", identity.speed());
        map.put("clock", identity.clockKind().name());
        map.put("intervalMillis", identity.intervalMillis());
        map.put("nanovoltsPerCount", identity.scales().nanovoltsPerCount());
        map.put("nanoamperesPerCount", identity.scales().nanoamperesPerCount());
        map.put("microkelvinPerCount", identity.scales().microkelvinPerCount());
        map.put("lowestCounts", identity.converter().lowestCounts());
        map.put("highestCounts", identity.converter().highestCounts());
        map.put("expandedOffsetNanovolts", identity.converter().offsetNanovolts());
        map.put("expandedGainPartsPerMillion", identity.converter().gainPartsPerMillion());
        map.put("expandedCelsiusMicrokelvin", identity.converter().celsiusMicrokelvin());
        map.put("channel", channel(basis.identity(), channel));
        map.put("ambientChannel", first(basis, ChannelRole.AMBIENT));
        map.put("referenceChannel", first(basis, ChannelRole.DUMMY));
        map.put("bankChannel", first(basis, ChannelRole.BANK));
        map.put("loadSensorChannel", basis.wiring().loadSensors().get(channel));
        map.put("leadShare", basis.wiring().leadShares().get(channel));
        map.put("calibration", calibrated(basis, channel));
        map.put("identityFrame", IdentityText.write(identity));
        map.put("identitySha256", calibration.board().identitySha256());
        map.put("basisSha256", calibration.board().basisSha256());
        return map;
    }

    /** Null where the channel was never calibrated. */
    private static Map<String, Object> calibrated(BoardBasis basis, int channel) {
        for (org.ebbwatch.calibration.Calibration each : basis.calibrations()) {
            if (each.channel() == channel) {
                Map<String, Object> map = RecordJson.toMap(each);
                map.put("madeUtc", WallLabels.rfc3339(each.madeWallMillis()));
                map.put("sha256", BasisText.sha256(each));
                return map;
            }
        }
        return null;
    }

    private static Map<String, Object> channel(Identity identity, int number) {
        ChannelIdentity channel = identity.channels().get(number);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("number", number);
        map.put("role", channel.role().name());
        map.put("loadMilliohms", channel.loadMilliohms());
        map.put(
                "abilities",
                new TreeSet<>(channel.abilities()).stream().map(Enum::name).toList());
        return map;
    }

    /** Null where the board has none. */
    private static Integer first(BoardBasis basis, ChannelRole role) {
        Identity identity = basis.identity();
        for (int channel = 0; channel < identity.channels().size(); channel++) {
            boolean ofOneLoad = basis.wiring().loadSensors().containsValue(channel);
            if (identity.channels().get(channel).role() == role && !ofOneLoad) {
                return channel;
            }
        }
        return null;
    }
}
