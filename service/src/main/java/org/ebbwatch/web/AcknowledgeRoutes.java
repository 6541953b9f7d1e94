package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.MediaType;
import io.micronaut.http.annotation.Consumes;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Post;
import io.micronaut.http.annotation.Produces;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.Hidden;
import org.ebbwatch.alarm.AcknowledgeLinks;
import org.ebbwatch.alarm.AlarmLinkDesk;

/**
 * Where the links of messages lead to. The link itself says who may: it was sent to one person and works once. Looking at it changes
 * nothing, however often a mail program does; only the button does.
 */
@Controller(AcknowledgeLinks.PATH)
@Requires(beans = AlarmLinkDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@Hidden
class AcknowledgeRoutes {
    private final AlarmLinkDesk desk;

    AcknowledgeRoutes(AlarmLinkDesk desk) {
        this.desk = desk;
    }

    @Get("{token}")
    @Produces(MediaType.TEXT_HTML)
    HttpResponse<String> look(String token) {
        return AcknowledgePage.of(desk.look(token));
    }

    @Post("{token}")
    @Consumes(MediaType.ALL)
    @Produces(MediaType.TEXT_HTML)
    HttpResponse<String> acknowledge(String token) {
        return AcknowledgePage.of(desk.acknowledge(token));
    }
}
