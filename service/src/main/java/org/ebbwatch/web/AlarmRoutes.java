package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.ebbwatch.alarm.AlarmSource;
import org.ebbwatch.web.answer.AlarmsAnswer;

/** The alarm book, for reading only. */
@Controller("/api/v1/alarms")
@Requires(beans = AlarmSource.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@Tag(name = "alarms")
class AlarmRoutes {
    private final AlarmSource source;

    AlarmRoutes(AlarmSource source) {
        this.source = source;
    }

    /** The alarms that are alive, those that need a person most first, and how the outlets do. */
    @Get
    AlarmsAnswer alarms() {
        return AlarmsAnswer.of(source.alarms());
    }
}
