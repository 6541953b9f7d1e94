package org.ebbwatch.web;

import io.micronaut.context.annotation.Primary;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.UUID;
import java.util.stream.LongStream;
import org.ebbwatch.alarm.AlarmHistory;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.alarm.book.Subject;

/** Twelve alarms within ten minutes, half an hour ago, and one a week and a half ago. */
@Singleton
@Primary
@Requires(property = "invented.rack")
class InventedHistory implements AlarmHistory {
    private static final long MINUTE = 60_000;

    @Override
    public List<Raised> raisedSince(long wallMillis) {
        return LongStream.concat(
                        LongStream.of(InventedWorkshop.SCANNED_MILLIS - 15_000 * MINUTE),
                        LongStream.range(0, 12)
                                .map(n -> InventedWorkshop.SCANNED_MILLIS - 30 * MINUTE + n * MINUTE / 2))
                .filter(moment -> moment >= wallMillis)
                .mapToObj(moment -> new Raised(
                        new UUID(8, moment),
                        AlarmKind.SENSOR_FAULT,
                        new Subject.Passage(InventedWorkshop.id(4)),
                        "Its sensor is open.",
                        moment))
                .toList();
    }
}
