package org.ebbwatch.sizing;

import org.ebbwatch.judge.procedure.Chemistry;

/**
 * The voltage of a rested cell as it depends on its state of charge, from full (1) to below what a gauge calls empty (0).
 *
 * <p>Sources: graphite with silicon oxide and NMC811 from Chen et al. 2020 (LG M50), within that cell's window; iron phosphate from
 * Afshar et al. 2017, against the same graphite in a window of our choice. Below 0 the curves go on until the graphite holds no
 * lithium. What is left is taken for a capacitor of 0.15 % of the capacity a volt; no source gives it, and it is too little to matter
 * for a time.
 */
enum OpenCircuit {
    LAYERED_OXIDE(0.9014, 0.9084, 0.2661),
    IRON_PHOSPHATE(0.81, 0.93, 0.03);

    private static final double ANODE_EMPTY = 0.0279;
    private static final double CAPACITOR_PER_VOLT = 0.0015;

    private final double anodeFull;
    private final double cathodeEmpty;
    private final double cathodeFull;

    OpenCircuit(double anodeFull, double cathodeEmpty, double cathodeFull) {
        this.anodeFull = anodeFull;
        this.cathodeEmpty = cathodeEmpty;
        this.cathodeFull = cathodeFull;
    }

    static OpenCircuit of(Chemistry chemistry) {
        return chemistry == Chemistry.LFP ? IRON_PHOSPHATE : LAYERED_OXIDE;
    }

    /** State of charge at which the graphite holds nothing more; below 0. */
    double bare() {
        return -ANODE_EMPTY / (anodeFull - ANODE_EMPTY);
    }

    /** State of charge at which the cell shows 0 V. */
    double bottom() {
        return bare() - CAPACITOR_PER_VOLT * curve(bare());
    }

    /** Volts at rest; 0 from {@link #bottom} down, those of a full cell above 1. */
    double volts(double stateOfCharge) {
        return stateOfCharge >= bare()
                ? curve(Math.min(stateOfCharge, 1))
                : Math.max(0, (stateOfCharge - bottom()) / CAPACITOR_PER_VOLT);
    }

    /** The state of charge at which a rested cell shows so many volts; 1 for more than a full cell shows. */
    double stateOfCharge(double volts) {
        double low = bottom();
        double high = 1;
        for (int halving = 0; halving < 60; halving++) {
            double middle = (low + high) / 2;
            if (volts(middle) < volts) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private double curve(double stateOfCharge) {
        double inCathode = cathodeEmpty + stateOfCharge * (cathodeFull - cathodeEmpty);
        double inAnode = ANODE_EMPTY + stateOfCharge * (anodeFull - ANODE_EMPTY);
        return (this == LAYERED_OXIDE ? nickelOxide(inCathode) : ironPhosphate(inCathode)) - graphite(inAnode);
    }

    private static double nickelOxide(double y) {
        return 4.4875
                - 0.8090 * y
                - 0.0428 * StrictMath.tanh(18.5138 * (y - 0.5542))
                - 17.7326 * StrictMath.tanh(15.7890 * (y - 0.3117))
                + 17.5842 * StrictMath.tanh(15.9308 * (y - 0.3120));
    }

    private static double ironPhosphate(double y) {
        return 3.4077 - 0.020269 * y + 0.5 * StrictMath.exp(-150 * y) - 0.9 * StrictMath.exp(-30 * (1 - y));
    }

    private static double graphite(double x) {
        return 0.2482
                + 1.9793 * StrictMath.exp(-39.3631 * x)
                - 0.0909 * StrictMath.tanh(29.8538 * (x - 0.1234))
                - 0.04478 * StrictMath.tanh(14.9159 * (x - 0.2769))
                - 0.0205 * StrictMath.tanh(30.4444 * (x - 0.6103));
    }
}
