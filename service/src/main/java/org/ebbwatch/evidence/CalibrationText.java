package org.ebbwatch.evidence;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import org.ebbwatch.evidence.Telling.Calibration;
import org.ebbwatch.passage.IdentityText;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Identity;

/** What a board said of itself, as the record has it: scales, uncertainties, channels. */
final class CalibrationText {
    /** How U follows from what a board states; see {@link org.ebbwatch.calibration.BoardScale}. */
    static final String UNCERTAINTY =
            "U = sqrt(o^2 + (g V)^2 + (2 r / sqrt 12)^2), k = 2: o offset, g gain, r the volts of one count, as the board"
                    + " states them; one count taken as a rectangular distribution (JCGM 100)";

    static final String SENSORS =
            "The board converts its temperature sensors itself and sends temperatures; which sensors and by which"
                    + " coefficients it does not say.";

    private CalibrationText() {}

    static Map<String, Object> of(Calibration calibration) {
        Identity identity = calibration.board().identity();
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
        map.put("channel", channel(identity, calibration.board().channel()));
        map.put("ambientChannel", first(identity, ChannelRole.AMBIENT));
        map.put("referenceChannel", first(identity, ChannelRole.DUMMY));
        map.put("bankChannel", first(identity, ChannelRole.BANK));
        map.put("identityFrame", IdentityText.write(identity));
        map.put("identitySha256", calibration.board().identitySha256());
        return map;
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
    private static Integer first(Identity identity, ChannelRole role) {
        for (int channel = 0; channel < identity.channels().size(); channel++) {
            if (identity.channels().get(channel).role() == role) {
                return channel;
            }
        }
        return null;
    }
}
