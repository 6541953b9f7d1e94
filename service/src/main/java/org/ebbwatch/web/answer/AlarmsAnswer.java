package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.alarm.AlarmsView;

/**
 * The alarm book.
 *
 * @param alarms those alive, the ones that need a person most first
 * @param outlets how the ways out do; none where no outlet is configured
 */
@Serdeable
public record AlarmsAnswer(List<AlarmAnswer> alarms, List<OutletAnswer> outlets) {

    public static AlarmsAnswer of(AlarmsView view) {
        return new AlarmsAnswer(
                view.alarms().stream().map(AlarmAnswer::of).toList(),
                view.outlets().stream().map(OutletAnswer::of).toList());
    }
}
