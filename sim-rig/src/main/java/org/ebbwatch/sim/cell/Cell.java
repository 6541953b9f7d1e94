package org.ebbwatch.sim.cell;

/**
 * One cell, stepped with a current that is constant over the step and a voltage taken at its end (implicit, so any step is
 * stable). A step is {@link #begin}, any number of {@link #trial} currents, {@link #finish}; a circuit around the cell searches
 * the current by trials. Discharge is positive.
 *
 * <p>State: charge of the well-connected {@link Grain}, charge of the slow share, volts across two resistor-capacitor pairs,
 * temperature. The cathode follows the mean charge. Resistances grow towards empty. Above 125 degrees Celsius the separator
 * shuts and resistance rises a thousandfold. Temperature changes nothing else; capacity does not age; charging is modelled
 * only as far as a leaking source needs it.
 *
 * <p>Heat is what remains of the energy: chemical and polarisation energy before the step, less after it, less what left at
 * the terminals. Cost of a step: some 0.1 microseconds with exponentials, 0.3 with diffusion; nothing is allocated. For one
 * thread.
 */
public final class Cell {
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double DEAD_STATE_OF_CHARGE = -0.04;
    private static final double OHMIC_GROWTH = 0.5;
    private static final double EXPONENTIALS_GROWTH = 20;
    private static final double DIFFUSION_GROWTH = 5;
    private static final double SHUTDOWN_CELSIUS = 125;
    private static final double SHUTDOWN_KELVIN_PER_E_FOLD = 2;
    private static final double SHUTDOWN_MOST = 1000;
    private static final double JOULES_PER_KELVIN_AND_AMPERE_HOUR = 14;
    private static final double KELVIN_PER_WATT_AT_3_AMPERE_HOURS = 24;
    private static final double REST_STEP_SECONDS = 60;

    private final CellSpec spec;
    private final OcvTable table;
    private final double coulombs;
    private final double ohms;
    private final double growthFactor;
    private final Pair fast;
    private final Pair slow;
    private final double share;
    private final Grain grain;
    private final ThermalNode thermal;

    private double slowStateOfCharge;
    private double mean;
    private double stepSeconds;
    private double exchanged;
    private double growth;

    private double inflow;
    private double surfaceAtRest;
    private double surfacePerAmpere;
    private double meanPerAmpere;
    private double laggingVolts;
    private double presentOhms;

    private double trialVolts;
    private double trialOhms;
    private double volts;
    private double amperes;
    private double storedJoules;
    private double deliveredJoules;
    private double heatJoules;

    /**
     * A cell that has rested.
     *
     * @param capacityFactor multiplies the spec's capacity: this cell's place in the spread
     * @param ohmsFactor multiplies the spec's resistances
     */
    public Cell(CellSpec spec, double capacityFactor, double ohmsFactor, double celsius) {
        this.spec = spec;
        table = OcvTable.of(spec.chemistry());
        coulombs = spec.ratedAmpereHours() * SECONDS_PER_HOUR * spec.health() * capacityFactor;
        ohms = spec.ohms() * ohmsFactor;
        share = spec.slowShare().share();
        mean = spec.arrival() == Arrival.DEAD ? DEAD_STATE_OF_CHARGE : spec.stateOfCharge();
        slowStateOfCharge = mean;
        Relaxation relaxation = spec.relaxation();
        fast = new Pair(relaxation.fastOhms() * ohmsFactor, relaxation.fastSeconds());
        if (relaxation instanceof Relaxation.Diffusion diffusion) {
            grain = new SphericalGrain(mean, diffusion.diffusionSeconds());
            slow = new Pair(0, 1);
            growthFactor = DIFFUSION_GROWTH;
        } else {
            Relaxation.Exponentials exponentials = (Relaxation.Exponentials) relaxation;
            grain = new UniformGrain(mean);
            slow = new Pair(exponentials.slowOhms() * ohmsFactor, exponentials.slowSeconds());
            growthFactor = EXPONENTIALS_GROWTH;
        }
        thermal = new ThermalNode(
                JOULES_PER_KELVIN_AND_AMPERE_HOUR * spec.ratedAmpereHours(),
                KELVIN_PER_WATT_AT_3_AMPERE_HOURS * StrictMath.pow(3 / spec.ratedAmpereHours(), 2.0 / 3),
                celsius);
        growth = 1 + growthFactor * table.emptiness(mean);
        volts = openCircuitVolts();
        storedJoules = storedNow();
    }

    private Cell(Cell other) {
        spec = other.spec;
        table = other.table;
        coulombs = other.coulombs;
        ohms = other.ohms;
        growthFactor = other.growthFactor;
        fast = other.fast.copy();
        slow = other.slow.copy();
        share = other.share;
        grain = other.grain.copy();
        thermal = new ThermalNode(1, 1, other.celsius());
        slowStateOfCharge = other.slowStateOfCharge;
        mean = other.mean;
        growth = other.growth;
        storedJoules = other.storedJoules;
        volts = other.volts;
    }

    /** Fixes the length of the steps to come, seconds; must be called before the first step. */
    public void setStep(double seconds) {
        stepSeconds = seconds;
        grain.setStep(seconds);
        fast.setStep(seconds);
        slow.setStep(seconds);
        thermal.setStep(seconds);
        exchanged = 1 - StrictMath.exp(-seconds / (spec.slowShare().hours() * SECONDS_PER_HOUR));
        meanPerAmpere = seconds / coulombs;
        surfacePerAmpere = meanPerAmpere / (1 - share) * grain.surfacePerShare();
    }

    /** Begins a step: all that happens without current. */
    public void begin() {
        inflow = 0;
        if (share > 0) {
            double given = share * (slowStateOfCharge - grain.surface()) * exchanged;
            slowStateOfCharge -= given / share;
            inflow = given / (1 - share);
        }
        surfaceAtRest = grain.relax() + inflow * grain.surfacePerShare();
        double emptiness = table.emptiness(mean);
        growth = 1 + growthFactor * emptiness;
        laggingVolts = fast.relax() + slow.relax();
        presentOhms = ohms * (1 + OHMIC_GROWTH * emptiness) * shutdown() + (fast.stepOhms() + slow.stepOhms()) * growth;
    }

    private double shutdown() {
        double above = thermal.celsius() - SHUTDOWN_CELSIUS;
        return above <= 0
                ? 1
                : Math.min(SHUTDOWN_MOST, StrictMath.exp(Math.min(above, 100) / SHUTDOWN_KELVIN_PER_E_FOLD));
    }

    /** What the terminals would show at the end of this step with this current: {@link #trialVolts}, {@link #trialOhms}. */
    public void trial(double candidateAmperes) {
        double surface = surfaceAtRest - candidateAmperes * surfacePerAmpere;
        double total = mean - candidateAmperes * meanPerAmpere;
        trialVolts =
                table.cathodeVolts(total) - table.anodeVolts(surface) - laggingVolts - candidateAmperes * presentOhms;
        trialOhms = presentOhms
                + table.cathodeSlope(table.lineAt(total), total) * meanPerAmpere
                - table.anodeSlope(table.lineAt(surface), surface) * surfacePerAmpere;
    }

    /** Volts of the last trial. */
    public double trialVolts() {
        return trialVolts;
    }

    /** By how many volts the last trial's volts fall per ampere more. */
    public double trialOhms() {
        return trialOhms;
    }

    /** Ends the step with the current that flowed in it. */
    public void finish(double flowedAmperes) {
        trial(flowedAmperes);
        amperes = flowedAmperes;
        volts = trialVolts;
        grain.take(flowedAmperes * meanPerAmpere / (1 - share) - inflow);
        mean -= flowedAmperes * meanPerAmpere;
        fast.charge(flowedAmperes, growth);
        slow.charge(flowedAmperes, growth);
        double delivered = volts * flowedAmperes * stepSeconds;
        double stored = storedNow();
        heatJoules = storedJoules - stored - delivered;
        storedJoules = stored;
        deliveredJoules += delivered;
    }

    /** Moves the temperature on by one step: the last step's own heat and so much more, joules. */
    public void warm(double moreJoules, double surroundingsCelsius) {
        thermal.step(heatJoules + moreJoules, surroundingsCelsius);
    }

    private double storedNow() {
        double anode = (1 - share) * grain.energy(table);
        if (share > 0) {
            anode += share * table.anodeEnergy(slowStateOfCharge);
        }
        return coulombs * (table.cathodeEnergy(mean) - anode)
                + (fast.farads() * fast.square() + slow.farads() * slow.square()) / (2 * growth);
    }

    /** Open-circuit voltage at equilibrium with the charge it holds now, volts. */
    public double openCircuitVolts() {
        return table.cathodeVolts(mean) - table.anodeVolts(mean);
    }

    /**
     * What the terminals will show after a rest from now, volts.
     *
     * @param siemens of an internal short that goes on meanwhile, 0 for none
     */
    public double restedVolts(double hours, double siemens) {
        Cell resting = new Cell(this);
        resting.setStep(REST_STEP_SECONDS);
        long steps = Math.round(hours * SECONDS_PER_HOUR / REST_STEP_SECONDS);
        for (long step = 0; step < steps; step++) {
            resting.begin();
            resting.trial(0);
            resting.finish(resting.trialVolts * siemens / (1 + resting.trialOhms * siemens));
        }
        return resting.volts;
    }

    public CellSpec spec() {
        return spec;
    }

    /** Volts at the terminals at the end of the last step. */
    public double volts() {
        return volts;
    }

    /** Current in the last step, discharge positive. */
    public double amperes() {
        return amperes;
    }

    /** Charge held over capacity; a little below 0 in a cell at 0 V. */
    public double stateOfCharge() {
        return mean;
    }

    /** Capacity, coulombs. */
    public double coulombs() {
        return coulombs;
    }

    public double celsius() {
        return thermal.celsius();
    }

    /** Heat of the cell's own losses in the last step, joules. */
    public double heatJoules() {
        return heatJoules;
    }

    /** Energy that left through the terminals since the beginning, joules. */
    public double deliveredJoules() {
        return deliveredJoules;
    }

    /** Chemical and polarisation energy held, joules above an arbitrary zero. */
    public double storedJoules() {
        return storedJoules;
    }

    /** Heat it gave to its surroundings since the beginning, joules. */
    public double lostJoules() {
        return thermal.lostJoules();
    }

    public double joulesPerKelvin() {
        return thermal.joulesPerKelvin();
    }
}
