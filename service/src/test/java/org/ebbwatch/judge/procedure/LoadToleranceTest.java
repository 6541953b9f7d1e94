package org.ebbwatch.judge.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LoadToleranceTest {

    @ParameterizedTest
    @ValueSource(doubles = {-0.001, 0.2001, Double.NaN, Double.POSITIVE_INFINITY})
    void a_share_out_of_its_range_is_refused_with_the_range(double share) {
        assertThatThrownBy(() -> new LoadTolerance(share))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("a share from 0 to 0.2");
    }

    /** Journals judged before there was a tolerance were judged with exactly this. */
    @Test
    void the_usual_tolerance_is_that_of_the_judge_before_it_could_be_given() {
        assertThat(LoadTolerance.USUAL.expandedShare()).isEqualTo(0.058);
    }

    /** A rectangular distribution of half-width a has the standard uncertainty a/√3 (JCGM 100, 4.3.7), k = 2. */
    @Property
    void the_expanded_share_is_that_of_a_rectangular_distribution_or_a_little_more(
            @ForAll @DoubleRange(max = 0.2) double share) {
        double expanded = 2 * share / Math.sqrt(3);

        assertThat(new LoadTolerance(share).expandedShare()).isBetween(expanded, 1.005 * expanded);
    }
}
