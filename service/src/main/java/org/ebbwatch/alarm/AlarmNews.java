package org.ebbwatch.alarm;

import java.util.Optional;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.AlarmEvent;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.passage.Happening;

/** A step of an alarm as something that happened on the rack. */
final class AlarmNews {
    private AlarmNews() {}

    static Happening of(AlarmEvent event) {
        Alarm alarm = event.alarm();
        Cause cause = alarm.cause();
        return new Happening(
                Happening.Kind.ALARM,
                cause.board(),
                cause.passage(),
                cause.tag(),
                cause.channel(),
                cause.eventMillis(),
                Optional.of(alarm.id()),
                alarm.steps(),
                event.step().name(),
                line(event));
    }

    private static String line(AlarmEvent event) {
        Alarm alarm = event.alarm();
        String cover = alarm.cover() == Cover.NONE ? "" : ", cover " + alarm.cover();
        String who = event.who().isEmpty() ? "" : ", by " + event.who();
        String reason = event.reason().isEmpty() ? "" : ": " + event.reason();
        return alarm.kind() + " is " + alarm.state() + cover + who + reason;
    }
}
