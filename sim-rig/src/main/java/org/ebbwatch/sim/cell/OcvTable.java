package org.ebbwatch.sim.cell;

import java.util.EnumMap;
import java.util.Map;

/**
 * Electrode potentials of a chemistry, tabulated for speed and read by straight lines. Range -6 % to 102 % of charge, held
 * level beyond; spacing 2^-16 below 6 %, where the voltage falls steeply, and 2^-12 above. Against the formulas an
 * open-circuit voltage is off by less than 0.1 mV, by up to 3 mV on the one line that holds the bend at bare graphite. Energies are the exact integrals of the straight lines, so a
 * cell that is stepped by this table neither makes nor loses energy. About 0.5 MB a chemistry; made by {@link StrictMath},
 * the same on every machine. Immutable.
 */
final class OcvTable {
    private static final double LOWEST = -0.0625;
    private static final double SPLIT = 0.0625;
    private static final double HIGHEST = 1.0234375;
    private static final double FINE_PER_UNIT = 65_536;
    private static final double COARSE_PER_UNIT = 4_096;
    private static final int FINE_CELLS = (int) ((SPLIT - LOWEST) * FINE_PER_UNIT);
    private static final int COARSE_CELLS = (int) ((HIGHEST - SPLIT) * COARSE_PER_UNIT);

    private static final double GROWTH_WIDTH = 0.018;
    private static final double GROWTH_LEVELS_OFF_AT = -0.01;

    private static final Map<Chemistry, OcvTable> TABLES = new EnumMap<>(Chemistry.class);

    static {
        for (Chemistry chemistry : Chemistry.values()) {
            TABLES.put(chemistry, new OcvTable(chemistry));
        }
    }

    private final double[] anode = new double[FINE_CELLS + COARSE_CELLS + 1];
    private final double[] cathode = new double[anode.length];
    private final double[] anodeEnergy = new double[anode.length];
    private final double[] cathodeEnergy = new double[anode.length];
    private final double[] emptiness = new double[anode.length];

    private OcvTable(Chemistry chemistry) {
        for (int i = 0; i < anode.length; i++) {
            double stateOfCharge = nodeAt(i);
            anode[i] = chemistry.anodeVolts(stateOfCharge);
            cathode[i] = chemistry.cathodeVolts(stateOfCharge);
            emptiness[i] = StrictMath.exp(-Math.max(stateOfCharge, GROWTH_LEVELS_OFF_AT) / GROWTH_WIDTH);
            if (i > 0) {
                double width = stateOfCharge - nodeAt(i - 1);
                anodeEnergy[i] = anodeEnergy[i - 1] + width * (anode[i - 1] + anode[i]) / 2;
                cathodeEnergy[i] = cathodeEnergy[i - 1] + width * (cathode[i - 1] + cathode[i]) / 2;
            }
        }
    }

    /** The table of a chemistry. */
    static OcvTable of(Chemistry chemistry) {
        return TABLES.get(chemistry);
    }

    /** Which straight line a state of charge lies on, or the nearest. */
    int lineAt(double stateOfCharge) {
        if (stateOfCharge < SPLIT) {
            return stateOfCharge <= LOWEST ? 0 : (int) ((stateOfCharge - LOWEST) * FINE_PER_UNIT);
        }
        int coarse = (int) ((stateOfCharge - SPLIT) * COARSE_PER_UNIT);
        return FINE_CELLS + Math.min(coarse, COARSE_CELLS - 1);
    }

    double anodeVolts(double stateOfCharge) {
        return volts(anode, stateOfCharge);
    }

    double cathodeVolts(double stateOfCharge) {
        return volts(cathode, stateOfCharge);
    }

    /** Volts per unit of state of charge on a line, 0 outside the table. */
    double anodeSlope(int line, double stateOfCharge) {
        return slope(anode, line, stateOfCharge);
    }

    double cathodeSlope(int line, double stateOfCharge) {
        return slope(cathode, line, stateOfCharge);
    }

    /** Integral of the anode's volts over state of charge, joules per coulomb of capacity. */
    double anodeEnergy(double stateOfCharge) {
        return energy(anode, anodeEnergy, stateOfCharge);
    }

    /** Integral of the cathode's volts over state of charge, joules per coulomb of capacity. */
    double cathodeEnergy(double stateOfCharge) {
        return energy(cathode, cathodeEnergy, stateOfCharge);
    }

    /** How much nearer to empty: e-fold every 1.8 % of charge, 1 at 0 %, level below -1 %. */
    double emptiness(double stateOfCharge) {
        return volts(emptiness, stateOfCharge);
    }

    private double volts(double[] nodes, double stateOfCharge) {
        int line = lineAt(stateOfCharge);
        double along = within(stateOfCharge) - nodeAt(line);
        return nodes[line] + along * perUnit(line) * (nodes[line + 1] - nodes[line]);
    }

    private static double slope(double[] nodes, int line, double stateOfCharge) {
        if (stateOfCharge <= LOWEST || stateOfCharge >= HIGHEST) {
            return 0;
        }
        return perUnit(line) * (nodes[line + 1] - nodes[line]);
    }

    private double energy(double[] nodes, double[] energies, double stateOfCharge) {
        int line = lineAt(stateOfCharge);
        double inside = within(stateOfCharge);
        double along = inside - nodeAt(line);
        double here = nodes[line] + along * perUnit(line) * (nodes[line + 1] - nodes[line]);
        return energies[line] + along * (nodes[line] + here) / 2 + (stateOfCharge - inside) * here;
    }

    private static double within(double stateOfCharge) {
        return stateOfCharge < LOWEST ? LOWEST : Math.min(stateOfCharge, HIGHEST);
    }

    private static double perUnit(int line) {
        return line < FINE_CELLS ? FINE_PER_UNIT : COARSE_PER_UNIT;
    }

    private static double nodeAt(int node) {
        return node < FINE_CELLS ? LOWEST + node / FINE_PER_UNIT : SPLIT + (node - FINE_CELLS) / COARSE_PER_UNIT;
    }
}
