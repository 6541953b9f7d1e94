package org.ebbwatch.judge.procedure;

import static java.util.Objects.requireNonNull;

/**
 * The limits and times a passage is judged by. An inconsistent set is refused where it is made, with the reason.
 *
 * <p>Those that come with the program are {@link BuiltIn}; {@code docs/procedure.md} gives the origin of each of their values.
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
        require(!name.isBlank(), "a procedure has a name");
        require(version >= 1, "a version starts at 1");
        require(drain.limitVolts() <= rest.limitVolts(), "the drain limit may not be above the rested limit");
        require(rest.limitVolts() <= drain.provenVolts(), "the rested limit may not be above the proof");
        require(
                tieOff.unbrokenMillis() <= tieOff.watchMillis(),
                "the unbroken end of the watch may not be longer than the watch");
        require(
                tieOff.looseVolts() < rest.limitVolts(),
                "a bond with the rested limit across it is no bond: it must be loose before that");
        require(
                plausible.lowestCelsius() < heat.ambientCelsius()
                        && plausible.highestCelsius() > heat.hotCelsius()
                        && plausible.highestCelsius() > heat.warmCelsius(),
                "a hot cell must be believed: the highest plausible temperature must lie above hot");
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
            require(provenVolts <= 2.5, "a proof above 2.5 V would turn away sound cells that are nearly empty");
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
            long calmMillis) {
        /** Rates are compared over this stretch at most, so that a rise must fit into it. */
        private static final double RATE_SECONDS = 10;

        /** A damaged cell may heat itself from 60 to 80 degC (from memory). */
        private static final double HEATS_ITSELF_CELSIUS = 80;

        /** Common practice, no source. */
        private static final double HOTTEST_BANK_CELSIUS = 300;

        public Heat {
            require(warmCelsius < hotCelsius, "warming must come before hot");
            require(tieOffWarmKelvin < tieOffHotKelvin, "in tie-off too, warming must come before hot");
            require(hotCelsius < HEATS_ITSELF_CELSIUS, "hot must come before 80 degC, where a cell may heat itself");
            require(tieOffHotCelsius <= hotCelsius, "a bonded cell may not be hotter than any other");
            require(
                    ambientCelsius < warmCelsius && ambientCelsius < tieOffHotCelsius,
                    "a room that is too warm must be told before its cells are warming or hot");
            require(
                    tieOffWarmKelvin > 0 && tieOffWarmKelvin <= restWarmKelvin && restWarmKelvin <= drainWarmKelvin,
                    "the less there is to heat a cell the less it may rise: no more in tie-off than in rest, nor there than in drain");
            require(drainWarmKelvin <= hotCelsius, "no cell rises so far in drain before it is hot");
            require(
                    hotKelvinPerSecond > 0 && hotRiseKelvin > 0 && hotRiseKelvin <= RATE_SECONDS * hotKelvinPerSecond,
                    "at the rate that is hot the rise must be complete within ten seconds, for no more are compared");
            require(
                    withoutDummyKelvin >= 0 && withoutDummyKelvin <= tieOffHotKelvin,
                    "without a dummy cell a limit may not be more than doubled");
            require(
                    bankCelsius > ambientCelsius && bankCelsius <= HOTTEST_BANK_CELSIUS,
                    "a resistor bank's limit must lie above the room's and at most at 300 degC");
            require(projectionMillis > 0, "hot must be looked for ahead of time");
            require(calmKelvin > 0 && calmKelvin <= restWarmKelvin, "a cell that is warming is not calm");
            require(calmMillis > 0, "calm takes time");
        }
    }

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
            long silentMillis) {
        public Plausible {
            require(lowestVolts <= -0.2 && lowestVolts >= -60, "a reversed cell must be believed, and -60 V must not");
            require(highestVolts >= 4.5 && highestVolts <= 60, "a full cell must be believed, and 60 V must not");
            require(
                    lowestCelsius <= -10 && lowestCelsius > -127,
                    "a cold room must be believed, and -127 degC, which means no sensor, must not");
            require(highestCelsius < 1000, "1000 degC must not be believed");
            require(
                    cellCoolingMillis >= 180_000,
                    "a sensor that has left its cell falls with a time constant of up to 60 s; three times that is the least");
            require(pauseMillis > 0 && silentMillis > 0, "a pause and a silence take time");
        }
    }

    /** The default: {@link BuiltIn#CAREFUL}. */
    public static Procedure careful() {
        return BuiltIn.CAREFUL.procedure();
    }

    /** {@link BuiltIn#STRICT}. */
    public static Procedure strict() {
        return BuiltIn.STRICT.procedure();
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
