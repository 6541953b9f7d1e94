package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A person who follows the link of a message in a browser, without a token and without a script. */
class AcknowledgeByLinkTest {
    private static final HttpClient BROWSER = HttpClient.newHttpClient();

    @TempDir
    Path records;

    private final Mailbox mailbox = new Mailbox();
    private Place place;
    private String path;

    @BeforeEach
    void a_passage_is_held_and_a_message_tells_of_it() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(ChannelSpec.switched(
                                CellSpec.build("A-17", NMC, 2.0).done(), 22)))
                .done();
        place = Place.of(QuietRack.of(board, records, List.of(mailbox)), records);
        var client = new Client(place);
        String passage = client.post(
                        "/api/v1/passages",
                        """
                        {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                         "loadOhms": 22, "switched": true}
                        """)
                .text("passageId");
        client.post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"PUT_ON\"}");
        place.rack().pass(4_000);
        place.rack().deliver();
        String link = mailbox.messages.get(0).field(MessageField.ACKNOWLEDGE_LINK);
        assertThat(link).startsWith(QuietRack.ADDRESS + '/');
        path = link.substring(QuietRack.ADDRESS.length());
    }

    @AfterEach
    void close() {
        place.close();
    }

    private HttpResponse<String> send(String method, String where) {
        var request = HttpRequest.newBuilder(URI.create(place.server().getURL() + where))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .method(method, BodyPublishers.noBody())
                .build();
        try {
            return BROWSER.send(request, BodyHandlers.ofString());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private AlarmView alarm() {
        return place.rack().alarms().alarms().get(0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"GET", "HEAD"})
    void looking_shows_the_alarm_and_a_button_and_changes_nothing(String method) {
        AlarmView before = alarm();
        for (int n = 0; n < 3; n++) {
            assertThat(send(method, path).statusCode()).isEqualTo(200);
        }
        assertThat(alarm()).isEqualTo(before);
        assertThat(place.rack().steps(before.id())).hasSize(1);
    }

    @Test
    void the_page_says_what_where_and_what_to_do() {
        HttpResponse<String> page = send("GET", path);

        assertThat(page.headers().firstValue("content-type")).hasValue("text/html;charset=utf-8");
        assertThat(page.body())
                .contains("<h1>" + alarm().kind().what() + "</h1>")
                .contains("<p>Cell A-17, board bench.</p>")
                .contains("<strong>To do:</strong> Read why it is held.")
                .contains("<form method=\"post\">")
                .doesNotContain("<script");
    }

    @Test
    void the_page_ties_the_browser_down_and_is_never_kept() {
        for (String method : List.of("GET", "POST")) {
            var headers = send(method, path).headers();
            assertThat(headers.firstValue("Content-Security-Policy"))
                    .hasValue("default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'self';"
                            + " frame-ancestors 'none'");
            assertThat(headers.firstValue("Cache-Control")).hasValue("no-store");
            assertThat(headers.firstValue("Referrer-Policy")).hasValue("no-referrer");
        }
    }

    @Test
    void its_style_is_there() {
        assertThat(send("GET", "/look.css").statusCode()).isEqualTo(200);
        assertThat(send("GET", "/link.css").statusCode()).isEqualTo(200);
    }

    @Test
    void the_button_acknowledges_once() {
        HttpResponse<String> done = send("POST", path);
        assertThat(done.statusCode()).isEqualTo(200);
        assertThat(done.body()).contains("<h1>Acknowledged.</h1>");
        assertThat(alarm().state()).isEqualTo(AlarmState.ACKNOWLEDGED);
        assertThat(alarm().acknowledgedBy()).isEqualTo("link of mailbox");

        for (String method : List.of("POST", "GET")) {
            HttpResponse<String> again = send(method, path);
            assertThat(again.statusCode()).isEqualTo(410);
            assertThat(again.body()).contains("This link was used.").doesNotContain("<form");
        }
        assertThat(place.rack().steps(alarm().id())).hasSize(2);
    }

    @Test
    void an_old_link_says_so() {
        place.rack().pass(25 * 3_600_000L);
        HttpResponse<String> old = send("POST", path);
        assertThat(old.statusCode()).isEqualTo(410);
        assertThat(old.body()).contains("This link is too old.").doesNotContain("<form");
        assertThat(alarm().state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    }

    @ParameterizedTest
    @ValueSource(strings = {"A", "x", "%3Cscript%3E"})
    void a_link_that_was_changed_is_none(String more) {
        for (String method : List.of("GET", "POST")) {
            HttpResponse<String> bad = send(method, path + more);
            assertThat(bad.statusCode()).isEqualTo(404);
            assertThat(bad.body()).contains("This is no link of this service.").doesNotContain("<script");
        }
        assertThat(alarm().state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    }
}
