package org.ebbwatch.sim.cell;

/**
 * The electrodes of a cell and how their potentials depend on its state of charge, 0 to 1. Below 0 both formulas go on until
 * the graphite holds no lithium (near -3 %); there the anode jumps to the potential at which copper dissolves, and the cell
 * falls through 0 V.
 *
 * <p>Sources: graphite and NMC from Chen et al. 2020 (LG M50, with that cell's stoichiometry window); LFP from Afshar et al.
 * 2017 as used with Prada et al. 2013. The LFP window, the slope of the anode's jump and the copper plateau of 3.65 V against
 * lithium are this model's choice: no source gives them for a cell at C/5.
 */
public enum Chemistry {
    /** Layered oxide, NMC811, against graphite with silicon oxide. */
    NMC(0.9014, 0.9084, 0.2661) {
        @Override
        double cathodeOf(double lithium) {
            return -0.8090 * lithium
                    + 4.4875
                    - 0.0428 * StrictMath.tanh(18.5138 * (lithium - 0.5542))
                    - 17.7326 * StrictMath.tanh(15.7890 * (lithium - 0.3117))
                    + 17.5842 * StrictMath.tanh(15.9308 * (lithium - 0.3120));
        }
    },
    /** Iron phosphate against graphite. */
    LFP(0.81, 0.93, 0.03) {
        @Override
        double cathodeOf(double lithium) {
            return 3.4077
                    - 0.020269 * lithium
                    + 0.5 * StrictMath.exp(-150 * lithium)
                    - 0.9 * StrictMath.exp(-30 * (1 - lithium));
        }
    };

    private static final double GRAPHITE_EMPTY = 0.0279;
    private static final double COPPER_PLATEAU_VOLTS = 3.65;
    private static final double JUMP_VOLTS_PER_STATE_OF_CHARGE = 725;
    private static final double PLATEAU_BEND_VOLTS = 0.05;

    private final double graphiteFull;
    private final double cathodeEmpty;
    private final double cathodeFull;

    Chemistry(double graphiteFull, double cathodeEmpty, double cathodeFull) {
        this.graphiteFull = graphiteFull;
        this.cathodeEmpty = cathodeEmpty;
        this.cathodeFull = cathodeFull;
    }

    /** Potential of the cathode's material against lithium, volts, at a share of its sites filled. */
    abstract double cathodeOf(double lithium);

    /** Potential of the cathode against lithium, volts. */
    public double cathodeVolts(double stateOfCharge) {
        return cathodeOf(cathodeEmpty + stateOfCharge * (cathodeFull - cathodeEmpty));
    }

    /** Potential of the anode against lithium, volts. */
    public double anodeVolts(double stateOfCharge) {
        double lithium = GRAPHITE_EMPTY + stateOfCharge * (graphiteFull - GRAPHITE_EMPTY);
        if (lithium >= 0) {
            return graphite(lithium);
        }
        double bare = graphite(0);
        double room = COPPER_PLATEAU_VOLTS - bare;
        double climb = JUMP_VOLTS_PER_STATE_OF_CHARGE * (stateOfChargeOfBareGraphite() - stateOfCharge);
        return bare + room - softPositive(room - climb);
    }

    /** Open-circuit voltage at equilibrium, volts. */
    public double openCircuitVolts(double stateOfCharge) {
        return cathodeVolts(stateOfCharge) - anodeVolts(stateOfCharge);
    }

    /** State of charge, below 0, at which the graphite holds no lithium. */
    public double stateOfChargeOfBareGraphite() {
        return -GRAPHITE_EMPTY / (graphiteFull - GRAPHITE_EMPTY);
    }

    private static double graphite(double lithium) {
        return 1.9793 * StrictMath.exp(-39.3631 * lithium)
                + 0.2482
                - 0.0909 * StrictMath.tanh(29.8538 * (lithium - 0.1234))
                - 0.04478 * StrictMath.tanh(14.9159 * (lithium - 0.2769))
                - 0.0205 * StrictMath.tanh(30.4444 * (lithium - 0.6103));
    }

    private static double softPositive(double volts) {
        double scaled = volts / PLATEAU_BEND_VOLTS;
        return scaled > 30 ? volts : PLATEAU_BEND_VOLTS * StrictMath.log1p(StrictMath.exp(scaled));
    }
}
