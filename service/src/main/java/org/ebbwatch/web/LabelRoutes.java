package org.ebbwatch.web;

import io.micronaut.context.annotation.Requires;
import io.micronaut.http.MediaType;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Produces;
import io.micronaut.http.annotation.QueryValue;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.Locale;
import java.util.stream.Collectors;
import org.ebbwatch.intake.IntakeDesk;
import org.ebbwatch.intake.IntakeRecord;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.Triage.Verdict;

/** A sheet of tags to print and cut, of the cells that were taken in last: one plain page without a script. */
@Controller(LabelRoutes.PATH)
@Requires(beans = IntakeDesk.class)
@ExecuteOn(TaskExecutors.BLOCKING)
@Hidden
class LabelRoutes {
    static final String PATH = "/intake-labels";
    private static final int MOST = 200;
    private static final String SHEET =
            """
            <!doctype html>
            <html lang="en">
              <head>
                <meta charset="utf-8">
                <title>Tags - Ebbwatch</title>
                <link rel="stylesheet" href="/labels.css">
              </head>
              <body>
            %s
              </body>
            </html>
            """;
    private static final String LABEL =
            """
                <section>
                  <h1>%s</h1>
                  <p>%s</p>
                  <p>%s</p>
                </section>
            """;

    private final IntakeDesk desk;

    LabelRoutes(IntakeDesk desk) {
        this.desk = desk;
    }

    @Get
    @Produces(MediaType.TEXT_HTML)
    String labels(@QueryValue(defaultValue = "40") int limit) {
        return SHEET.formatted(desk.records().latest().stream()
                .limit(Math.max(1, Math.min(MOST, limit)))
                .map(LabelRoutes::label)
                .collect(Collectors.joining()));
    }

    private static String label(IntakeRecord record) {
        IntakeFields card = record.card();
        String what = card.chemistry().orElse(CellChemistry.UNKNOWN).key() + ", "
                + card.cellsInSeries()
                        .map(cells -> cells > 1 ? cells + " in series, " : "")
                        .orElse("")
                + card.ratedAmpereHours()
                        .map(hours -> String.format(Locale.ROOT, "%.3g Ah", hours))
                        .orElse("");
        String state = card.condition().orElse(Condition.UNKNOWN).words()
                + (record.triage().verdict() == Verdict.ADMITTED ? "" : " - NOT ON THE RACK");
        return LABEL.formatted(AcknowledgePage.escaped(record.tag()), what, state);
    }
}
