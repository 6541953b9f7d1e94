package org.ebbwatch.alarm;

import static java.util.Objects.requireNonNull;

import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.Outlet;

/**
 * A way an alarm leaves, and what it is used for.
 *
 * @param outlet the way itself
 * @param route of which alarms it is told, and when
 */
public record AlarmWay(Outlet outlet, Route route) {
    public AlarmWay {
        requireNonNull(outlet);
        requireNonNull(route);
    }
}
