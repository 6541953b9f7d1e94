package org.ebbwatch.judge.procedure;

import static java.util.Objects.requireNonNull;

import java.time.Duration;

/**
 * The limits and times a passage is judged by. An inconsistent set is refused where it is made.
 *
 * <p>Origins are given beside each value of {@link #careful()}; {@code docs/procedure.md} explains them in plain words.
 *
 * @param name what a person calls it
 * @param version one more at every change of a number
 * @param drain when a cell may come off its load
 * @param rest how it is tested with the load off
 * @param tieOff how it is watched with its leads bonded
 * @param heat temperature limits
 * @param plausible what a sensor may say and be believed
 */
public record Procedure(
        String name, int version, Drain drain, Rest rest, TieOff tieOff, Heat heat, Plausible plausible) {

    public Procedure {
        requireNonNull(name);
        require(version >= 1, "a version starts at 1");
        require(drain.limitVolts() <= rest.limitVolts(), "the drain limit may not be above the rested limit");
        require(
                tieOff.unbrokenMillis() <= tieOff.watchMillis(),
                "the unbroken end of the watch may not be longer than the watch");
        require(heat.warmCelsius() < heat.hotCelsius(), "warming must come before hot");
        require(heat.tieOffWarmKelvin() < heat.tieOffHotKelvin(), "in tie-off too, warming must come before hot");
    }

    /**
     * When a cell may come off its load.
     *
     * @param provenVolts a cell never seen above this with the right polarity is not proven
     * @param limitVolts V + U under load must stay below this
     * @param holdMillis for so long the first time, twice as long each further time
     * @param longestMillis then a person must decide
     */
    public record Drain(double provenVolts, double limitVolts, long holdMillis, long longestMillis) {
        public Drain {
            require(limitVolts > 0 && limitVolts < provenVolts, "the drain limit must lie between 0 V and the proof");
            require(holdMillis > 0 && longestMillis > holdMillis, "the hold must fit into the longest drain");
        }
    }

    /**
     * How a cell is tested with its load off.
     *
     * @param limitVolts V + U with the load off must stay below this
     * @param leastMillis for at least so long
     * @param recoveryMillis within so long the load-off step must be seen
     */
    public record Rest(double limitVolts, long leastMillis, long recoveryMillis) {
        public Rest {
            require(limitVolts > 0 && limitVolts <= 1.0, "a rested limit above 1 V is not empty by anyone's rule");
            require(recoveryMillis > 0 && recoveryMillis < leastMillis, "the recovery must be seen within the rest");
        }
    }

    /**
     * How a cell is watched with its leads bonded, and measured once more.
     *
     * @param watchMillis bonded and watched for so long
     * @param unbrokenMillis the last so long without a gap
     * @param openMillis parted and measured for so long
     * @param longestOpenMillis by then the voltage must have recovered, or nothing shows that a cell is attached
     * @param looseVolts V - U above this means the bond is loose
     */
    public record TieOff(
            long watchMillis, long unbrokenMillis, long openMillis, long longestOpenMillis, double looseVolts) {
        public TieOff {
            require(watchMillis > 0 && unbrokenMillis > 0 && openMillis > 0, "watch times must be above 0");
            require(longestOpenMillis >= openMillis, "the longest opening may not be shorter than the least");
            require(looseVolts > 0, "a bond has some voltage");
        }
    }

    /**
     * Temperature limits. Kelvin are above ambient, or above the dummy cell in tie-off.
     *
     * @param warmCelsius WARMING in DRAIN at this
     * @param drainWarmKelvin or at so much above ambient
     * @param restWarmKelvin WARMING in REST, CHECK_IN and HELD
     * @param tieOffWarmKelvin WARMING in TIE_OFF
     * @param hotCelsius HOT in any phase
     * @param hotKelvinPerSecond HOT at this rate with {@code hotRiseKelvin} risen
     * @param tieOffHotKelvin HOT in TIE_OFF
     * @param tieOffHotCelsius HOT in TIE_OFF
     * @param withoutDummyKelvin tie-off limits are wider by this where there is only ambient to compare with
     * @param ambientCelsius AMBIENT_HIGH above this
     * @param bankCelsius LOAD_HOT above this
     * @param projectionMillis WARMING when the slope leads to HOT within so long
     * @param calmKelvin HOT can be handled once the cell stayed below ambient plus this for {@code calmMillis}
     * @param calmMillis see {@code calmKelvin}
     */
    public record Heat(
            double warmCelsius,
            double drainWarmKelvin,
            double restWarmKelvin,
            double tieOffWarmKelvin,
            double hotCelsius,
            double hotKelvinPerSecond,
            double hotRiseKelvin,
            double tieOffHotKelvin,
            double tieOffHotCelsius,
            double withoutDummyKelvin,
            double ambientCelsius,
            double bankCelsius,
            long projectionMillis,
            double calmKelvin,
            long calmMillis) {}

    /**
     * What a sensor may say and be believed, and how long nothing may be heard.
     *
     * @param lowestVolts a finite voltage below this is absurd
     * @param highestVolts or above this
     * @param lowestCelsius a finite temperature below this is absurd
     * @param highestCelsius or above this
     * @param cellCoolingMillis the shortest time constant of a cell in still air; a sensor falling toward ambient three
     *     times as fast has left its cell
     * @param pauseMillis a gap up to this pauses the clocks, a longer one starts them again
     * @param silentMillis a board is silent after this, or after three intervals
     */
    public record Plausible(
            double lowestVolts,
            double highestVolts,
            double lowestCelsius,
            double highestCelsius,
            long cellCoolingMillis,
            long pauseMillis,
            long silentMillis) {}

    /**
     * The default. Unless said otherwise a value is common practice without a source. Recovery, hold and rest times come
     * from the relaxation of real cells (docs/procedure.md).
     */
    public static Procedure careful() {
        return new Procedure(
                "careful",
                1,
                new Drain(1.0, 0.10, hours(12), hours(14 * 24)),
                new Rest(0.50, hours(24), minutes(60)),
                new TieOff(hours(24), hours(12), minutes(60), hours(6), 0.02),
                new Heat(45, 15, 5, 3, 60, 0.5, 2, 5, 45, 2, 35, 110, minutes(10), 3, hours(1)),
                new Plausible(-5.5, 5.5, -40, 150, minutes(6), minutes(15), 5_000));
    }

    /** As {@link #careful()}, with 72 h of rest below 0.10 V and 48 h of tie-off. */
    public static Procedure strict() {
        Procedure careful = careful();
        return new Procedure(
                "strict",
                1,
                new Drain(1.0, 0.10, hours(12), hours(14 * 24)),
                new Rest(0.10, hours(72), minutes(60)),
                new TieOff(hours(48), hours(12), minutes(60), hours(6), 0.02),
                careful.heat(),
                careful.plausible());
    }

    private static long hours(long hours) {
        return Duration.ofHours(hours).toMillis();
    }

    private static long minutes(long minutes) {
        return Duration.ofMinutes(minutes).toMillis();
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
