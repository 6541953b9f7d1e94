package org.ebbwatch.sim.cell;

/**
 * How a cell's voltage lags behind its charge and comes back at rest. All resistances are those of a half-full cell; they
 * grow towards empty.
 */
public sealed interface Relaxation {
    /** Resistance of the fast part, ohms. */
    double fastOhms();

    /** Time constant of the fast part, seconds. */
    double fastSeconds();

    /**
     * Two time constants: resistors with capacitors across them, in series.
     *
     * @param slowOhms resistance of the slow part, ohms
     * @param slowSeconds time constant of the slow part, seconds
     */
    record Exponentials(double fastOhms, double fastSeconds, double slowOhms, double slowSeconds)
            implements Relaxation {
        public Exponentials {
            requireNotNegative("fastOhms", fastOhms);
            requireNotNegative("slowOhms", slowOhms);
            requirePositive("fastSeconds", fastSeconds);
            requirePositive("slowSeconds", slowSeconds);
        }
    }

    /**
     * Lithium diffusing in a spherical grain: under load its surface is emptier than its heart. The fast part stays a time
     * constant: what the electrolyte and the surface do.
     *
     * @param diffusionSeconds radius squared over diffusivity, seconds; the slowest mode at rest has a 20th of it
     */
    record Diffusion(double fastOhms, double fastSeconds, double diffusionSeconds) implements Relaxation {
        public Diffusion {
            requireNotNegative("fastOhms", fastOhms);
            requirePositive("fastSeconds", fastSeconds);
            requirePositive("diffusionSeconds", diffusionSeconds);
        }
    }

    private static void requirePositive(String name, double number) {
        if (!(number > 0)) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is above 0");
        }
    }

    private static void requireNotNegative(String name, double number) {
        if (!(number >= 0)) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is 0 or more");
        }
    }
}
