package org.ebbwatch.sim.scenario;

import java.util.Objects;
import java.util.Optional;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.CellSpec;

/**
 * One channel and what is on it when the scenario starts.
 *
 * @param role what it is wired to
 * @param cell what is on it, only on a {@link ChannelRole#CELL} or {@link ChannelRole#WATCH} channel
 * @param loadOhms nominal resistance of its load, 0: it has none of its own
 * @param loadTolerance the actual resistance lies within so much of the nominal, relative, 0 to 0.5
 * @param leadOhms resistance of both load leads together, 0 to 10
 * @param switched the board switches the load; otherwise a person puts it on
 * @param handLoaded a person has put the load on before the scenario starts
 * @param fourWire the voltage is sensed at the cell; otherwise behind the load leads
 */
public record ChannelSpec(
        ChannelRole role,
        Optional<CellSpec> cell,
        double loadOhms,
        double loadTolerance,
        double leadOhms,
        boolean switched,
        boolean handLoaded,
        boolean fourWire) {
    public ChannelSpec {
        Objects.requireNonNull(role, "role");
        if (cell.isPresent() && role != ChannelRole.CELL && role != ChannelRole.WATCH) {
            throw new IllegalArgumentException("a channel of role " + role + " holds no cell");
        }
        Ranges.within("loadOhms", loadOhms, 0, 1e6);
        Ranges.within("loadTolerance", loadTolerance, 0, 0.5);
        Ranges.within("leadOhms", leadOhms, 0, 10);
        if (loadOhms == 0 && (switched || handLoaded)) {
            throw new IllegalArgumentException("a load that is switched or on needs loadOhms above 0");
        }
    }

    /** A cell on a four-wire channel with a load the board switches: 1 % tolerance, 60 milliohms of leads. */
    public static ChannelSpec switched(CellSpec cell, double loadOhms) {
        return new ChannelSpec(ChannelRole.CELL, Optional.of(cell), loadOhms, 0.01, 0.06, true, false, true);
    }

    /** The same with a load that a person puts on. */
    public static ChannelSpec byHand(CellSpec cell, double loadOhms) {
        return new ChannelSpec(ChannelRole.CELL, Optional.of(cell), loadOhms, 0.01, 0.06, false, false, true);
    }

    /** A cell channel with a switched load and nothing on it yet. */
    public static ChannelSpec empty(double loadOhms) {
        return new ChannelSpec(ChannelRole.CELL, Optional.empty(), loadOhms, 0.01, 0.06, loadOhms > 0, false, true);
    }

    /** A channel that measures only temperature: ambient, dummy, watch or bank. */
    public static ChannelSpec thermometer(ChannelRole role) {
        return new ChannelSpec(role, Optional.empty(), 0, 0, 0, false, false, true);
    }

    /** Whether the channel measures volts. */
    public boolean measuresVolts() {
        return role == ChannelRole.CELL;
    }
}
