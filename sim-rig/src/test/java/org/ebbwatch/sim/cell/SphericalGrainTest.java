package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class SphericalGrainTest {
    private static final double DIFFUSION_SECONDS = 4500;

    private static void run(SphericalGrain grain, double seconds, double step, double sharePerSecond) {
        grain.setStep(step);
        for (long i = Math.round(seconds / step); i > 0; i--) {
            grain.relax();
            grain.take(sharePerSecond * step);
        }
    }

    /** Source: diffusion in a sphere with constant flux, settled: mean minus surface is rate times R²/D over 15. */
    @Test
    void a_steady_drain_settles_to_the_known_difference_between_mean_and_surface() {
        SphericalGrain grain = new SphericalGrain(1, DIFFUSION_SECONDS);
        double rate = 0.1 / 3600;
        run(grain, 3600, 1, rate);

        assertThat(grain.mean() - grain.surface()).isCloseTo(rate * DIFFUSION_SECONDS / 15, within(rate * 15));
    }

    /** Source: the slowest mode of a sphere without flux decays with R²/D over 20.19, 4.4934 squared. */
    @Test
    void at_rest_the_difference_fades_with_the_slowest_mode() {
        SphericalGrain grain = new SphericalGrain(1, DIFFUSION_SECONDS);
        run(grain, 3600, 1, 0.1 / 3600);
        run(grain, 300, 1, 0);
        double before = grain.mean() - grain.surface();
        run(grain, 200, 1, 0);
        double after = grain.mean() - grain.surface();

        assertThat(200 / Math.log(before / after)).isCloseTo(DIFFUSION_SECONDS / 20.19, within(12.0));
    }

    /** Source: flux into a sphere, short times: mean less surface is R²/D over 3 per unit rate, times 2 sqrt(t/pi) + t. */
    @Test
    void early_on_the_surface_falls_with_the_square_root_of_time() {
        SphericalGrain grain = new SphericalGrain(1, DIFFUSION_SECONDS);
        double rate = 1e-3;
        run(grain, 20, 0.05, rate);
        double time = 20 / DIFFUSION_SECONDS;
        double expected = rate * DIFFUSION_SECONDS / 3 * (2 * Math.sqrt(time / Math.PI) + time);

        assertThat(1 - grain.surface()).isCloseTo(expected, within(0.04 * expected));
    }

    @Property(tries = 100)
    void charge_is_kept_whatever_is_taken(
            @ForAll @Size(20) List<@DoubleRange(min = -0.05, max = 0.05) Double> shares,
            @ForAll @DoubleRange(min = 0.01, max = 60) double step) {
        SphericalGrain grain = new SphericalGrain(0.5, DIFFUSION_SECONDS);
        grain.setStep(step);
        double left = 0.5;
        for (double share : shares) {
            grain.relax();
            grain.take(share);
            left -= share;
        }
        assertThat(grain.mean()).isCloseTo(left, within(1e-12));
    }

    @Test
    void a_copy_goes_on_like_the_original() {
        SphericalGrain grain = new SphericalGrain(1, DIFFUSION_SECONDS);
        run(grain, 600, 1, 1e-4);
        Grain copy = grain.copy();
        run(grain, 60, 1, 0);
        for (int i = 0; i < 60; i++) {
            copy.relax();
            copy.take(0);
        }
        assertThat(copy.surface()).isEqualTo(grain.surface());
    }
}
