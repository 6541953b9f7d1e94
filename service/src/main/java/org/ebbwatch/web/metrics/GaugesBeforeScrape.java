package org.ebbwatch.web.metrics;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.annotation.RequestFilter;
import io.micronaut.http.annotation.ServerFilter;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;

/** Sets the gauges just before they are read, so that no timer is needed and every scrape shows one moment. */
@ServerFilter("/prometheus")
class GaugesBeforeScrape {
    private final RackGauges rack;
    private final AlarmGauges alarms;

    GaugesBeforeScrape(RackGauges rack, @Nullable AlarmGauges alarms) {
        this.rack = rack;
        this.alarms = alarms;
    }

    @RequestFilter
    @ExecuteOn(TaskExecutors.BLOCKING)
    void refresh() {
        rack.refresh();
        if (alarms != null) {
            alarms.refresh();
        }
    }
}
