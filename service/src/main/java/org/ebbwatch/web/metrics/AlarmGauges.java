package org.ebbwatch.web.metrics;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmHistory;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.judge.FindingKind.Urgency;

/** The alarms as gauges by urgency: how many stand, how many nobody has acknowledged, and how often they were raised. */
@Singleton
@Requires(beans = {AlarmSource.class, AlarmHistory.class})
final class AlarmGauges {
    private static final long HOUR_MILLIS = 3_600_000;
    private static final long TEN_MINUTES_MILLIS = 600_000;

    private final AlarmSource alarms;
    private final AlarmHistory history;
    private final HostClock clock;
    private final MultiGauge standing;
    private final MultiGauge unacknowledged;
    private final MultiGauge lastHour;
    private final MultiGauge lastTenMinutes;

    AlarmGauges(AlarmSource alarms, AlarmHistory history, HostClock clock, MeterRegistry registry) {
        this.alarms = alarms;
        this.history = history;
        this.clock = clock;
        standing = gauge(registry, "ebbwatch.alarms.standing", "Alarms whose condition stands");
        unacknowledged = gauge(registry, "ebbwatch.alarms.unacknowledged", "Alarms nobody has acknowledged");
        lastHour = gauge(registry, "ebbwatch.alarms.raised.hour", "Alarms raised within the last hour");
        lastTenMinutes = gauge(registry, "ebbwatch.alarms.raised.ten.minutes", "Alarms raised within ten minutes");
    }

    private static MultiGauge gauge(MeterRegistry registry, String name, String description) {
        return MultiGauge.builder(name).description(description).register(registry);
    }

    synchronized void refresh() {
        List<AlarmView> alive = alarms.alarms().alarms();
        long now = clock.now().wallMillis();
        List<Raised> raised = history.raisedSince(now - HOUR_MILLIS);
        set(standing, urgency -> alive(alive, urgency, alarm -> alarm.state().isActive()));
        set(
                unacknowledged,
                urgency -> alive(alive, urgency, alarm -> alarm.state().isUnacknowledged()));
        set(lastHour, urgency -> raised(raised, urgency, now - HOUR_MILLIS));
        set(lastTenMinutes, urgency -> raised(raised, urgency, now - TEN_MINUTES_MILLIS));
    }

    private static long alive(List<AlarmView> alarms, Urgency urgency, Predicate<AlarmView> which) {
        return alarms.stream()
                .filter(alarm -> alarm.urgency() == urgency)
                .filter(which)
                .count();
    }

    private static long raised(List<Raised> raised, Urgency urgency, long since) {
        return raised.stream()
                .filter(each -> each.wallMillis() >= since && each.kind().urgency() == urgency)
                .count();
    }

    private static void set(MultiGauge gauge, ToDoubleFunction<Urgency> count) {
        gauge.register(
                Arrays.stream(Urgency.values())
                        .map(urgency -> Row.of(Tags.of("urgency", urgency.name()), count.applyAsDouble(urgency)))
                        .toList(),
                true);
    }
}
