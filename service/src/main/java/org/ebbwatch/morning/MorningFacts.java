package org.ebbwatch.morning;

import static java.util.Objects.requireNonNull;

import java.util.List;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.plan.Plan;

/**
 * What a morning report is made of.
 *
 * @param rack as it stands now
 * @param plan as it stands now
 * @param living the alarms that are alive now
 * @param raised every time an alarm was raised since the evening, oldest first
 * @param sinceWallMillis the evening
 * @param wallMillis now
 */
public record MorningFacts(
        RackView rack, Plan plan, List<AlarmView> living, List<Raised> raised, long sinceWallMillis, long wallMillis) {
    public MorningFacts {
        requireNonNull(rack);
        requireNonNull(plan);
        living = List.copyOf(living);
        raised = List.copyOf(raised);
    }
}
