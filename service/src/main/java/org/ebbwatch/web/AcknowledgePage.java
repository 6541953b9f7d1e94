package org.ebbwatch.web;

import io.micronaut.http.HttpResponse;
import io.micronaut.http.HttpStatus;
import io.micronaut.http.MediaType;
import java.util.List;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer;
import org.ebbwatch.alarm.AlarmReceipt;
import org.ebbwatch.alarm.AlarmView;

/** What somebody sees who followed a link of a message: one plain page without a script, to be understood at night. */
final class AcknowledgePage {
    private static final String WHOLE =
            """
            <!doctype html>
            <html lang="en">
              <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta name="color-scheme" content="light dark">
                <meta name="robots" content="noindex">
                <title>%s - Ebbwatch</title>
                <link rel="stylesheet" href="/look.css">
                <link rel="stylesheet" href="/link.css">
              </head>
              <body>
                <main>
                  <h1>%s</h1>
            %s
                  <p class="small">A cell can burn whatever a page says. Your emergency plan and your local rules come first.</p>
                </main>
              </body>
            </html>
            """;

    private AcknowledgePage() {}

    /** The page for that answer. */
    static HttpResponse<String> of(LinkAnswer answer) {
        if (answer instanceof LinkAnswer.Open open) {
            return page(HttpStatus.OK, open.alarm().what(), alarm(open.alarm()) + BUTTON);
        }
        if (answer instanceof LinkAnswer.Done done) {
            return page(HttpStatus.OK, "Acknowledged.", said(done.receipt(), done.onDisk()));
        }
        if (answer instanceof LinkAnswer.Used used) {
            return page(
                    HttpStatus.GONE,
                    "This link was used.",
                    line("It acknowledged the alarm " + used.receipt().kind()
                            + ", and works once. Nothing was done now."));
        }
        if (answer instanceof LinkAnswer.Changed changed) {
            return page(
                    HttpStatus.CONFLICT,
                    "The alarm has changed since this message.",
                    line("Nothing was done. This is how it stands now; a newer message has its own link.")
                            + alarm(changed.now()));
        }
        if (answer instanceof LinkAnswer.Expired) {
            return page(
                    HttpStatus.GONE,
                    "This link is too old.",
                    line("Links work for a day. Nothing was done. The alarm may still stand: look at the rack."));
        }
        if (answer instanceof LinkAnswer.Over) {
            return page(HttpStatus.GONE, "This alarm is over.", line("There is nothing to acknowledge any more."));
        }
        return page(
                HttpStatus.NOT_FOUND,
                "This is no link of this service.",
                line("Nothing was done. Look whether the whole link was copied, to its last letter."));
    }

    private static final String BUTTON =
            """
                  <form method="post">
                    <button type="submit">I know of it: acknowledge</button>
                  </form>
                  <p class="small">Works once. It tells the others that somebody knows; it switches nothing.</p>
            """;

    private static String alarm(AlarmView alarm) {
        return line(where(alarm.tags(), alarm.cause().board()))
                + "      <p class=\"to-do\"><strong>To do:</strong> " + escaped(alarm.toDo()) + "</p>\n"
                + line(alarm.consequence())
                + line(alarm.cause().line())
                + line("The alarm " + alarm.kind() + " is " + alarm.state() + ", cover " + alarm.cover() + '.');
    }

    /** Which cells, or which board, or the rack. */
    static String where(List<String> cells, String board) {
        if (cells.isEmpty()) {
            return board.isEmpty() ? "The rack." : "Board " + board + '.';
        }
        String which = (cells.size() == 1 ? "Cell " : "Cells ") + String.join(", ", cells);
        return which + (board.isEmpty() ? "" : ", board " + board) + '.';
    }

    private static String said(AlarmReceipt receipt, boolean onDisk) {
        return line("The alarm " + receipt.kind() + " is " + receipt.state()
                        + " now. The others are told that somebody knows.")
                + line("What is to be done about it is still to be done.")
                + (onDisk ? "" : line("It is not on disk yet: the records cannot be kept now."));
    }

    private static HttpResponse<String> page(HttpStatus status, String title, String content) {
        return HttpResponse.<String>status(status)
                .contentType(MediaType.TEXT_HTML_TYPE)
                .characterEncoding("utf-8")
                .body(WHOLE.formatted(escaped(title), escaped(title), content.stripTrailing()));
    }

    private static String line(String text) {
        return "      <p>" + escaped(text) + "</p>\n";
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
