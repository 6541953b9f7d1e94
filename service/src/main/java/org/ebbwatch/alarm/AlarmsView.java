package org.ebbwatch.alarm;

import java.util.List;
import org.ebbwatch.alarm.outlet.OutletView;

/**
 * The alarms as they stand at one moment.
 *
 * @param alarms those alive, the ones that need a person most first
 * @param outlets how the ways out do
 */
public record AlarmsView(List<AlarmView> alarms, List<OutletView> outlets) {
    public AlarmsView {
        alarms = List.copyOf(alarms);
        outlets = List.copyOf(outlets);
    }
}
