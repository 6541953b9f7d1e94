package org.ebbwatch.passage;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.Correction;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.Identity;

/**
 * All that the readings of a board rest on. It is kept with them as {@link BasisText}, so that they read the same whenever they are
 * read again, whatever has been calibrated or rewired since.
 *
 * @param said what the board said of itself
 * @param wiring what the rack file says of its channels
 * @param calibrations of its channels, at most one each, those that only confirm the board's own scale among them
 */
public record BoardBasis(Identity said, Wiring wiring, List<Calibration> calibrations) {
    public BoardBasis {
        requireNonNull(said);
        requireNonNull(wiring);
        calibrations = calibrations.stream()
                .sorted(Comparator.comparingInt(Calibration::channel))
                .toList();
    }

    /** The board's own word alone. */
    public static BoardBasis of(Identity said) {
        return new BoardBasis(said, Wiring.NONE, List.of());
    }

    /** The board as it is wired; roles of channels it does not have are passed over. */
    public Identity identity() {
        if (wiring.roles().isEmpty()) {
            return said;
        }
        List<ChannelIdentity> channels = new ArrayList<>(said.channels());
        wiring.roles().forEach((channel, role) -> {
            if (channel < channels.size()) {
                ChannelIdentity was = channels.get(channel);
                channels.set(channel, new ChannelIdentity(role, was.abilities(), was.loadMilliohms()));
            }
        });
        return new Identity(
                said.bootNumber(),
                said.clockKind(),
                said.simulated(),
                said.hasBuzzer(),
                said.hasLoadRelay(),
                said.speed(),
                said.intervalMillis(),
                said.hostTimeoutMillis(),
                said.scales(),
                said.converter(),
                said.contactInputs(),
                said.serialNumber(),
                said.firmware(),
                channels);
    }

    /** By channel, the corrections to apply. */
    public Map<Integer, Correction> corrections() {
        Map<Integer, Correction> corrections = new HashMap<>();
        calibrations.stream()
                .filter(Calibration::applied)
                .forEach(calibration -> corrections.put(calibration.channel(), calibration.correction()));
        return corrections;
    }

    BoardScale scale() {
        return new BoardScale(said, corrections());
    }
}
