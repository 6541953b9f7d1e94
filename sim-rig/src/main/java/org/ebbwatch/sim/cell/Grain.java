package org.ebbwatch.sim.cell;

/** The anode material that is well connected: where its charge sits, and what its surface shows. */
abstract sealed class Grain permits UniformGrain, SphericalGrain {
    /** Fixes the length of the steps to come. */
    abstract void setStep(double seconds);

    /** Lets charge even out for one step with nothing taken; gives the state of charge of the surface after it. */
    abstract double relax();

    /** How far the surface falls at the end of this step per share of the charge taken through it in this step. */
    abstract double surfacePerShare();

    /** Takes a share of the charge through the surface in the step that {@link #relax} began. */
    abstract void take(double share);

    /** State of charge of the surface at the end of the last step. */
    abstract double surface();

    /** State of charge on average. */
    abstract double mean();

    /** Energy of the anode potential, joules per coulomb of capacity. */
    abstract double energy(OcvTable table);

    abstract Grain copy();
}
