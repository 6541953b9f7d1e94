package org.ebbwatch.sim.cell;

/** Material whose charge is always even. */
final class UniformGrain extends Grain {
    private double stateOfCharge;

    UniformGrain(double stateOfCharge) {
        this.stateOfCharge = stateOfCharge;
    }

    @Override
    void setStep(double seconds) {}

    @Override
    double relax() {
        return stateOfCharge;
    }

    @Override
    double surfacePerShare() {
        return 1;
    }

    @Override
    void take(double share) {
        stateOfCharge -= share;
    }

    @Override
    double surface() {
        return stateOfCharge;
    }

    @Override
    double mean() {
        return stateOfCharge;
    }

    @Override
    double energy(OcvTable table) {
        return table.anodeEnergy(stateOfCharge);
    }

    @Override
    Grain copy() {
        return new UniformGrain(stateOfCharge);
    }
}
