package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.passage.RackSource.TracePoint;

/**
 * A thinned-out trace, column by column: entry n of every list belongs to the same moment.
 *
 * @param passageId whose trace it is
 * @param eventMillis event times, rising
 * @param volts null where not read
 * @param celsius null where not read
 * @param loadApplied whether the load was on
 */
@Serdeable
public record TraceAnswer(
        UUID passageId, List<Long> eventMillis, List<Double> volts, List<Double> celsius, List<Boolean> loadApplied) {

    static TraceAnswer of(UUID passage, List<TracePoint> points) {
        List<Long> eventMillis = new ArrayList<>(points.size());
        List<Double> volts = new ArrayList<>(points.size());
        List<Double> celsius = new ArrayList<>(points.size());
        List<Boolean> loadApplied = new ArrayList<>(points.size());
        for (TracePoint point : points) {
            eventMillis.add(point.eventMillis());
            volts.add(Figures.fine(point.volts()));
            celsius.add(Figures.coarse(point.celsius()));
            loadApplied.add(point.loadApplied());
        }
        return new TraceAnswer(passage, eventMillis, volts, celsius, loadApplied);
    }
}
