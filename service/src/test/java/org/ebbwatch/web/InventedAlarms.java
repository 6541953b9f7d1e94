package org.ebbwatch.web;

import io.micronaut.context.annotation.Primary;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.AlarmsView;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.alarm.outlet.OutletView;

/** Two alarms and an outlet that has not got rid of anything; there only where the property {@code invented.rack} is set. */
@Singleton
@Primary
@Requires(property = "invented.rack")
class InventedAlarms implements AlarmSource {

    @Override
    public AlarmsView alarms() {
        var cutOff = new Cause(
                "Collapsed to 0.021 V.",
                Optional.of(InventedWorkshop.id(5)),
                "vacuum-6",
                "bench",
                4,
                88_200_000,
                91,
                0);
        return new AlarmsView(
                List.of(
                        view(
                                AlarmKind.CUT_OFF,
                                AlarmState.UNACKNOWLEDGED,
                                Cover.NONE,
                                cutOff,
                                List.of("vacuum-6"),
                                Optional.empty(),
                                Set.of(AlarmStep.SHELVED, AlarmStep.ACKNOWLEDGED)),
                        view(
                                AlarmKind.STORAGE_FAULT,
                                AlarmState.ACKNOWLEDGED,
                                Cover.SHELVED,
                                Cause.ofService("disk full"),
                                List.of(),
                                Optional.of(new PutAway(
                                        "Anna",
                                        "a larger disk is on its way",
                                        InventedWorkshop.SCANNED_MILLIS,
                                        OptionalLong.of(InventedWorkshop.SCANNED_MILLIS + 3_600_000))),
                                Set.of(AlarmStep.SHELVING_ENDED))),
                List.of(new OutletView("webhook", 3, 1, 7, "alarms.example answered 503", OptionalLong.empty())));
    }

    static UUID id(AlarmKind kind) {
        return new UUID(7, kind.what().length());
    }

    private static AlarmView view(
            AlarmKind kind,
            AlarmState state,
            Cover cover,
            Cause cause,
            List<String> tags,
            Optional<PutAway> putAway,
            Set<AlarmStep> allowed) {
        return new AlarmView(
                id(kind),
                kind == AlarmKind.CUT_OFF ? 1 : 4,
                kind,
                kind.urgency(),
                kind.isLatched(),
                "rack",
                state,
                cover,
                true,
                kind.what(),
                kind.consequence(),
                kind.toDo(),
                cause,
                tags,
                InventedWorkshop.SCANNED_MILLIS,
                state == AlarmState.ACKNOWLEDGED ? "Anna" : "",
                putAway,
                allowed);
    }
}
