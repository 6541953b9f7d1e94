package org.ebbwatch.web.metrics;

import io.micronaut.http.annotation.RequestFilter;
import io.micronaut.http.annotation.ServerFilter;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;

/** Sets the rack's gauges just before they are read, so that no timer is needed and every scrape shows one moment. */
@ServerFilter("/prometheus")
class GaugesBeforeScrape {
    private final RackGauges gauges;

    GaugesBeforeScrape(RackGauges gauges) {
        this.gauges = gauges;
    }

    @RequestFilter
    @ExecuteOn(TaskExecutors.BLOCKING)
    void refresh() {
        gauges.refresh();
    }
}
