package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.trace.plot.PlotThinning;

class ChartPointsTest {

    @Property(tries = 300)
    void a_chart_of_both_quantities_keeps_what_a_chart_of_each_keeps(
            @ForAll @Size(max = 400) List<@IntRange(min = -1, max = 50) Integer> readings,
            @ForAll @IntRange(min = 1, max = 30) int buckets) {
        long to = 10L * readings.size() + 1;
        var both = new ChartPoints(0, to, buckets);
        var volts = new PlotThinning(0, to, buckets);
        var celsius = new PlotThinning(0, to, buckets);
        List<TracePoint> all = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            int reading = readings.get(i);
            TracePoint point = new TracePoint(
                    10L * i,
                    reading < 0 ? Double.NaN : reading / 10.0,
                    reading % 7 == 3 ? Double.NaN : 50 - reading * 3 % 17,
                    reading % 2 == 0);
            all.add(point);
            both.add(point.eventMillis(), point.volts(), point.celsius(), point.loadApplied());
            volts.add(point.eventMillis(), point.volts());
            celsius.add(point.eventMillis(), point.celsius());
        }
        TreeSet<Long> kept = new TreeSet<>();
        for (PlotThinning thinning : List.of(volts, celsius)) {
            for (long millis : thinning.points().eventMillis()) {
                kept.add(millis);
            }
        }

        assertThat(both.points())
                .isEqualTo(all.stream()
                        .filter(point -> kept.contains(point.eventMillis()))
                        .toList());
    }
}
