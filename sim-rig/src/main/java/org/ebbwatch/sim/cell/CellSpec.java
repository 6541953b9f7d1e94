package org.ebbwatch.sim.cell;

import java.util.Objects;

/**
 * One cell as it comes in.
 *
 * @param tag the person's name for it
 * @param chemistry its electrodes
 * @param ratedAmpereHours what its label says, 0.01 to 1000
 * @param health capacity now over rated capacity, 0.01 to 1.5, before the spread
 * @param spread relative standard deviation of capacity and of resistance about what this spec says, 0 to 0.3; drawn by the
 *     board's seed and the tag
 * @param stateOfCharge of the capacity now, -0.04 to 1
 * @param ohms resistance that shows at once, at half charge, 0.00001 to 100
 * @param relaxation how the voltage lags
 * @param slowShare material in poor contact
 * @param cutOffVolts where the protection board in front of it opens, volts, up to 4; 0: it has none
 * @param arrival what state it comes in
 * @param reversed put on the wrong way round
 */
public record CellSpec(
        String tag,
        Chemistry chemistry,
        double ratedAmpereHours,
        double health,
        double spread,
        double stateOfCharge,
        double ohms,
        Relaxation relaxation,
        SlowShare slowShare,
        double cutOffVolts,
        Arrival arrival,
        boolean reversed) {
    public CellSpec {
        Objects.requireNonNull(tag, "tag");
        Objects.requireNonNull(chemistry, "chemistry");
        Objects.requireNonNull(relaxation, "relaxation");
        Objects.requireNonNull(slowShare, "slowShare");
        Objects.requireNonNull(arrival, "arrival");
        within("ratedAmpereHours", ratedAmpereHours, 0.01, 1000);
        within("health", health, 0.01, 1.5);
        within("spread", spread, 0, 0.3);
        within("stateOfCharge", stateOfCharge, -0.04, 1);
        within("ohms", ohms, 1e-5, 100);
        within("cutOffVolts", cutOffVolts, 0, 4);
    }

    private static void within(String name, double number, double lowest, double highest) {
        if (!(number >= lowest && number <= highest)) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is " + lowest + " to " + highest);
        }
    }

    /** A full, sound cell of 80 % health that relaxes by exponentials, with the resistance of an old cell its size. */
    public static CellSpec of(String tag, Chemistry chemistry, double ratedAmpereHours) {
        return build(tag, chemistry, ratedAmpereHours).done();
    }

    /** Begins with {@link #of} and changes what is named. */
    public static Builder build(String tag, Chemistry chemistry, double ratedAmpereHours) {
        return new Builder(tag, chemistry, ratedAmpereHours);
    }

    /** What differs from an ordinary old cell. Each method takes what the record's component of that name takes. */
    public static final class Builder {
        private final String tag;
        private final Chemistry chemistry;
        private final double ratedAmpereHours;
        private double health = 0.8;
        private double spread;
        private double stateOfCharge = 1;
        private double ohms;
        private Relaxation relaxation;
        private SlowShare slowShare = SlowShare.NONE;
        private double cutOffVolts;
        private Arrival arrival = Arrival.SOUND;
        private boolean reversed;

        private Builder(String tag, Chemistry chemistry, double ratedAmpereHours) {
            this.tag = tag;
            this.chemistry = chemistry;
            this.ratedAmpereHours = ratedAmpereHours;
            ohms(0.15 / ratedAmpereHours);
        }

        public Builder health(double share) {
            health = share;
            return this;
        }

        public Builder spread(double relative) {
            spread = relative;
            return this;
        }

        public Builder stateOfCharge(double share) {
            stateOfCharge = share;
            return this;
        }

        /** Sets the resistance, and a relaxation by exponentials that goes with it. */
        public Builder ohms(double number) {
            ohms = number;
            return exponentials();
        }

        /** Exponentials in proportion to the resistance; time constants as in a recording of an 18650 after 1.0 V. */
        public Builder exponentials() {
            return relaxation(new Relaxation.Exponentials(ohms, 17, 2 * ohms, 1415));
        }

        /** Diffusion, with a fast part in proportion to the resistance. */
        public Builder diffusion() {
            return relaxation(new Relaxation.Diffusion(1.5 * ohms, 20, 4500));
        }

        public Builder relaxation(Relaxation form) {
            relaxation = form;
            return this;
        }

        public Builder slowShare(SlowShare share) {
            slowShare = share;
            return this;
        }

        public Builder protectionBoard(double volts) {
            cutOffVolts = volts;
            return this;
        }

        public Builder arrival(Arrival state) {
            arrival = state;
            return this;
        }

        public Builder reversed() {
            reversed = true;
            return this;
        }

        public CellSpec done() {
            return new CellSpec(
                    tag,
                    chemistry,
                    ratedAmpereHours,
                    health,
                    spread,
                    stateOfCharge,
                    ohms,
                    relaxation,
                    slowShare,
                    cutOffVolts,
                    arrival,
                    reversed);
        }
    }
}
