package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RandomnessTest {
    private static final int DRAWS = 400_000;

    @Test
    void normals_have_the_moments_of_a_normal() {
        Randomness random = Randomness.of(3, "moments");
        double sum = 0;
        double squares = 0;
        double fourths = 0;
        int beyondTwo = 0;
        for (int i = 0; i < DRAWS; i++) {
            double draw = random.nextNormal();
            sum += draw;
            squares += draw * draw;
            fourths += draw * draw * draw * draw;
            beyondTwo += Math.abs(draw) > 2 ? 1 : 0;
        }
        assertThat(sum / DRAWS).isCloseTo(0, within(0.006));
        assertThat(squares / DRAWS).isCloseTo(1, within(0.01));
        assertThat(fourths / DRAWS).isCloseTo(3, within(0.08));
        assertThat((double) beyondTwo / DRAWS).isCloseTo(0.0455, within(0.003));
    }

    @Test
    void uniforms_fill_0_to_1_evenly() {
        Randomness random = Randomness.of(3, "even");
        int[] tenths = new int[10];
        for (int i = 0; i < DRAWS; i++) {
            tenths[(int) (random.nextDouble() * 10)]++;
        }
        for (int count : tenths) {
            assertThat(count).isCloseTo(DRAWS / 10, within(900));
        }
    }

    @Test
    void streams_of_one_seed_differ_by_purpose_and_repeat() {
        assertThat(Randomness.of(1, "a").nextLong())
                .isEqualTo(Randomness.of(1, "a").nextLong());
        assertThat(Randomness.of(1, "a").nextLong())
                .isNotEqualTo(Randomness.of(1, "b").nextLong());
        assertThat(Randomness.of(1, "a").nextLong())
                .isNotEqualTo(Randomness.of(2, "a").nextLong());
    }
}
