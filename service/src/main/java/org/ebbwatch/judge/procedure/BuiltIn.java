package org.ebbwatch.judge.procedure;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.procedure.Procedure.Drain;
import org.ebbwatch.judge.procedure.Procedure.Heat;
import org.ebbwatch.judge.procedure.Procedure.Plausible;
import org.ebbwatch.judge.procedure.Procedure.Rest;
import org.ebbwatch.judge.procedure.Procedure.TieOff;

/**
 * The procedures that come with the program. None is looser than {@link #CAREFUL} in a limit that protects; the longest time in
 * drain alone is longer where holds and rests are.
 *
 * <p>Unless said otherwise a value is common practice without a source; {@code docs/procedure.md} gives the origin of each
 * and the reasons. Recovery, hold and rest times come from the relaxation of real cells.
 */
public enum BuiltIn {
    /** The default. */
    CAREFUL,

    /** As {@link #CAREFUL}, with 72 h of rest below 0.10 V and 48 h of tie-off. */
    STRICT,

    /**
     * For iron phosphate. Its positive electrode stays at one potential to the end, so that hardly any charge lies between a
     * cell that rests near nought and one that climbs back towards its plateau: a lower limit and a longer look cost no charge.
     */
    LFP,

    /**
     * For cells of several ampere hours. They hold more behind the same voltage, cool slowly, and show at the case late what
     * happens at the core.
     */
    LARGE,

    /** For dented, puffed or dropped cells whose case is intact. Torn, leaking, hissing or warm ones do not go on a rack. */
    DAMAGED;

    /** A smaller cell may cool faster than {@link #LARGE} believes of a sensor that is still on it (computed). */
    private static final double LEAST_LARGE_AMPERE_HOURS = 2;

    /** From here on the reasons for {@link #LARGE} weigh. */
    private static final double LARGE_AMPERE_HOURS = 5;

    /** Its name, as it is written in a rack file. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Its numbers. */
    public Procedure procedure() {
        return switch (this) {
            case CAREFUL ->
                named(
                        new Drain(1.0, 0.10, hours(12), hours(14 * 24)),
                        new Rest(0.50, hours(24), minutes(60)),
                        new TieOff(hours(24), hours(12), minutes(60), hours(6), 0.02),
                        new Heat(45, 15, 5, 3, 60, 0.5, 2, 5, 45, 2, 35, 110, minutes(10), 3, hours(1)),
                        new Plausible(-5.5, 5.5, -40, 150, minutes(6), minutes(15), 5_000));
            case STRICT ->
                asCareful(
                        new Rest(0.10, hours(72), minutes(60)),
                        new TieOff(hours(48), hours(12), minutes(60), hours(6), 0.02));
            case LFP ->
                asCareful(
                        new Rest(0.30, hours(48), minutes(60)),
                        new TieOff(hours(24), hours(12), hours(3), hours(6), 0.02));
            case LARGE ->
                named(
                        new Drain(1.0, 0.10, hours(24), hours(21 * 24)),
                        new Rest(0.30, hours(48), minutes(60)),
                        new TieOff(hours(48), hours(24), hours(2), hours(6), 0.01),
                        new Heat(40, 10, 3, 2, 55, 0.25, 2, 4, 40, 2, 35, 110, minutes(20), 2, hours(4)),
                        new Plausible(-5.5, 5.5, -40, 150, minutes(10), minutes(15), 5_000));
            case DAMAGED ->
                named(
                        new Drain(1.0, 0.10, hours(24), hours(28 * 24)),
                        new Rest(0.30, hours(72), minutes(60)),
                        new TieOff(hours(72), hours(24), hours(2), hours(6), 0.02),
                        new Heat(40, 8, 3, 2, 50, 0.25, 2, 4, 40, 2, 30, 110, minutes(20), 2, hours(12)),
                        new Plausible(-5.5, 5.5, -40, 150, minutes(6), minutes(5), 5_000));
        };
    }

    private Procedure asCareful(Rest rest, TieOff tieOff) {
        Procedure careful = CAREFUL.procedure();
        return named(careful.drain(), rest, tieOff, careful.heat(), careful.plausible());
    }

    private Procedure named(Drain drain, Rest rest, TieOff tieOff, Heat heat, Plausible plausible) {
        return new Procedure(key(), 1, drain, rest, tieOff, heat, plausible);
    }

    /** All names. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(BuiltIn::key).toList();
    }

    /** The one with that name; empty where there is none. */
    public static Optional<BuiltIn> ofKey(String key) {
        return Arrays.stream(values()).filter(each -> each.key().equals(key)).findFirst();
    }

    /** Why such a cell may not be judged by it, and what to take instead; empty where it may. */
    public Optional<String> refusal(Chemistry chemistry, double ratedAmpereHours) {
        if (this == LFP && chemistry != Chemistry.LFP) {
            return Optional.of(
                    "the procedure lfp is for iron phosphate cells, and this is none; take careful, strict, large or"
                            + " damaged");
        }
        if (this == LARGE && ratedAmpereHours < LEAST_LARGE_AMPERE_HOURS) {
            return Optional.of(
                    "the procedure large is for cells of 2 Ah and more; this one cools so fast that its sensor would"
                            + " be taken for fallen off; take careful, strict, lfp or damaged");
        }
        return Optional.empty();
    }

    /** Which other procedure was made for such a cell; empty where this one does as well. */
    public Optional<String> advice(Chemistry chemistry, double ratedAmpereHours) {
        if (this != LARGE && this != DAMAGED && ratedAmpereHours >= LARGE_AMPERE_HOURS) {
            return Optional.of("the procedure large is made for cells of 5 Ah and more");
        }
        if (this == CAREFUL && chemistry == Chemistry.LFP) {
            return Optional.of("the procedure lfp is made for iron phosphate cells");
        }
        return Optional.empty();
    }

    private static long hours(long hours) {
        return Duration.ofHours(hours).toMillis();
    }

    private static long minutes(long minutes) {
        return Duration.ofMinutes(minutes).toMillis();
    }
}
