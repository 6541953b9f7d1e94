package org.ebbwatch.trace.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class PlotThinningTest {

    @Property
    void every_bucket_keeps_its_first_last_least_and_greatest_reading(
            @ForAll Random random,
            @ForAll @IntRange(max = 3000) int readings,
            @ForAll @IntRange(min = 1, max = 50) int buckets) {
        long span = 1L + random.nextInt(1_000_000);
        long from = random.nextInt();
        PlotThinning thinning = new PlotThinning(from, from + span, buckets);
        long[] times =
                random.longs(readings, from, from + span).sorted().distinct().toArray();
        double[] values = random.doubles(times.length).toArray();
        for (int i = 0; i < times.length; i++) {
            thinning.add(times[i], values[i]);
        }

        PlotThinning.Points points = thinning.points();

        int at = 0;
        for (int bucket = 0; bucket < buckets; bucket++) {
            double least = Double.POSITIVE_INFINITY;
            double greatest = Double.NEGATIVE_INFINITY;
            int first = at;
            while (at < times.length && (int) ((double) (times[at] - from) / span * buckets) <= bucket) {
                least = Math.min(least, values[at]);
                greatest = Math.max(greatest, values[at]);
                at++;
            }
            if (at > first) {
                assertThat(points.readings()).contains(values[first], values[at - 1], least, greatest);
            }
        }
        assertThat(points.eventMillis().length).isLessThanOrEqualTo(4 * buckets);
        for (int i = 0; i < points.eventMillis().length; i++) {
            int source = Arrays.binarySearch(times, points.eventMillis()[i]);
            assertThat(source).isNotNegative();
            assertThat(points.readings()[i]).isEqualTo(values[source]);
            assertThat(i == 0 || points.eventMillis()[i] > points.eventMillis()[i - 1])
                    .isTrue();
        }
    }

    @Test
    void a_single_high_reading_among_a_million_is_kept() {
        PlotThinning thinning = new PlotThinning(0, 1_000_000, 500);
        for (int i = 0; i < 1_000_000; i++) {
            thinning.add(i, i == 654_321 ? 61.5 : 25);
        }

        PlotThinning.Points points = thinning.points();

        assertThat(points.readings()).contains(61.5);
        assertThat(points.eventMillis()).contains(654_321).hasSizeLessThanOrEqualTo(2000);
    }

    @Test
    void an_invalid_reading_leaves_a_gap_where_it_was() {
        PlotThinning thinning = new PlotThinning(0, 100, 1);
        thinning.add(10, 1);
        thinning.add(20, Double.NaN);
        thinning.add(30, Double.NaN);
        thinning.add(40, 2);

        PlotThinning.Points points = thinning.points();

        assertThat(points.eventMillis()).containsExactly(10, 20, 40);
        assertThat(points.readings()).containsExactly(1, Double.NaN, 2);
    }

    @Test
    void readings_outside_the_chart_are_left_out() {
        PlotThinning thinning = new PlotThinning(100, 200, 10);
        thinning.add(99, 1);
        thinning.add(100, 2);
        thinning.add(199, 3);
        thinning.add(200, 4);

        assertThat(thinning.points().readings()).containsExactly(2, 3);
    }

    @Test
    void a_chart_without_width_is_refused() {
        assertThatThrownBy(() -> new PlotThinning(5, 5, 10)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PlotThinning(Long.MIN_VALUE, Long.MAX_VALUE, 10))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PlotThinning(0, 5, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
