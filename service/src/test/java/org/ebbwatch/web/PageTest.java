package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.web.answer.Attention;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class PageTest {
    @Inject
    private EmbeddedServer server;

    @ParameterizedTest
    @CsvSource({
        "/, text/html",
        "/index.html, text/html",
        "/rack.js, application/javascript",
        "/alarms.js, application/javascript",
        "/hands.js, application/javascript",
        "/rack.css, text/css",
        "/look.css, text/css",
        "/mark.svg, image/svg+xml"
    })
    void every_part_of_the_page_is_served(String path, String type) {
        Asked part = Asked.get(server, path);

        assertThat(part.status()).isEqualTo(200);
        assertThat(part.header("Content-Type")).startsWith(type);
    }

    @Test
    void the_page_loads_nothing_that_is_not_served() {
        Matcher links = Pattern.compile("(?:href|src)=\"([^\"#]+)\"").matcher(page());
        List<String> paths = links.results().map(found -> found.group(1)).toList();

        assertThat(paths).contains("rack.js", "rack.css", "look.css", "mark.svg", "api/v1/openapi.yml", "health");
        assertThat(paths)
                .allSatisfy(path -> assertThat(Asked.get(server, "/" + path).status())
                        .as(path)
                        .isEqualTo(200));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/rack.js", "/alarms.js", "/hands.js", "/rack.css", "/look.css"})
    void no_part_asks_another_host(String path) {
        assertThat(Asked.get(server, path).body().replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http://", "https://", "//cdn", "@import");
    }

    @Test
    void nothing_is_written_into_the_page_that_its_own_policy_would_block() {
        assertThat(page())
                .doesNotContain("style=")
                .doesNotContain("<style")
                .doesNotContainPattern("<script(?![^>]* src=)");
        assertThat(page()).doesNotContainPattern("\\son[a-z]+=");
    }

    @Test
    void the_page_warns_where_it_matters() {
        assertThat(words()).contains("A cell can burn while this page is calm.");
        assertThat(words()).contains("Do not rely on the page alone; your local rules come first.");
        assertThat(words()).contains("A low voltage under load is not an empty cell: the rest decides.");
        assertThat(script()).contains("Keep away and follow your emergency plan.");
    }

    @Test
    void the_page_says_when_it_is_stopped_and_when_it_shows_a_model() {
        assertThat(script())
                .contains("Stopped. No answer from the service", "No scan since", "What stands here is old");
        assertThat(words()).contains("simulated");
        assertThat(script()).contains("no real cell is there");
    }

    @Test
    void the_page_uses_the_projects_words() {
        assertThat(words()).contains("check-in drain rest tie-off released held", "channel", "Needs a person");
        assertThat((words() + script()).toLowerCase(Locale.ROOT))
                .doesNotContain("slot", "charger", "dashboard", "widget", "battery level", "job ");
    }

    @Test
    void the_page_knows_a_word_for_everything_the_service_may_say() {
        Stream<Enum<?>> sayings = Stream.of(
                        Phase.values(),
                        Attention.values(),
                        Urgency.values(),
                        LinkState.values(),
                        ChannelRole.values(),
                        AlarmState.values(),
                        Cover.values())
                .flatMap(Stream::of);
        assertThat(sayings.filter(saying -> saying != ChannelRole.CELL))
                .allSatisfy(saying -> assertThat(script()).containsPattern("\\b" + saying.name() + ": \""));
    }

    @Test
    void what_the_scripts_take_from_each_other_is_served() {
        Matcher imports = Pattern.compile("from \"\\./([a-z.]+)\"").matcher(script());

        assertThat(imports.results().map(found -> found.group(1)).distinct())
                .isNotEmpty()
                .allSatisfy(part ->
                        assertThat(Asked.get(server, "/" + part).status()).isEqualTo(200));
    }

    @Test
    void alarms_stand_first_and_say_state_since_when_and_what_to_do() {
        assertThat(page().indexOf("id=\"alarms\"")).isPositive().isLessThan(page().indexOf("id=\"needs\""));
        assertThat(page()).contains("class=\"skip\" href=\"#alarms\"");
        assertThat(words()).contains("Alarms");
        assertThat(script())
                .contains("api/v1/alarms", "alarm.toDo", "alarm.cause", "raisedAt", "No alarm.")
                .contains("Alarms do not get out by the");
    }

    @Test
    void every_part_the_scripts_look_for_is_on_the_page() {
        Matcher ids = Pattern.compile("byId\\(\"([a-z-]+)\"\\)").matcher(script());

        assertThat(ids.results().map(found -> found.group(1)).distinct())
                .hasSizeGreaterThan(10)
                .allSatisfy(id -> assertThat(page()).contains("id=\"" + id + '"'));
    }

    @Test
    void someone_who_does_not_see_the_page_can_use_it() {
        assertThat(page())
                .contains("<html lang=\"en\">", "aria-live=\"polite\"", "aria-live=\"assertive\"", "role=\"alert\"")
                .contains("class=\"skip\" href=\"#needs\"", "id=\"needs\"");
        assertThat(script()).contains("aria-current");
    }

    @Nested
    class The_colours {
        @ParameterizedTest
        @CsvSource({
            "ink, ground", "ink, sheet", "ink, line", "faint, ground", "faint, sheet",
            "ink, danger-ground", "ink, ringing-ground", "ink, work-ground", "on-stop, stop", "work, sheet"
        })
        void of_words_can_be_read_in_the_light_and_in_the_dark(String text, String under) {
            assertThat(look().inTheLight().contrast(text, under)).isGreaterThanOrEqualTo(4.5);
            assertThat(look().inTheDark().contrast(text, under)).isGreaterThanOrEqualTo(4.5);
        }

        @ParameterizedTest
        @CsvSource({
            "danger, danger-ground", "ringing, ringing-ground", "work, work-ground",
            "water, sheet", "water, shelf", "ink, shelf"
        })
        void of_shapes_can_be_told_in_the_light_and_in_the_dark(String shape, String under) {
            assertThat(look().inTheLight().contrast(shape, under)).isGreaterThanOrEqualTo(3);
            assertThat(look().inTheDark().contrast(shape, under)).isGreaterThanOrEqualTo(3);
        }

        private Look look() {
            return new Look(Asked.get(server, "/look.css").body());
        }
    }

    private String page() {
        return Asked.get(server, "/").body();
    }

    private String words() {
        return page().replaceAll("(?s)<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    private String script() {
        return Stream.of("/rack.js", "/alarms.js", "/hands.js")
                .map(path -> Asked.get(server, path).body())
                .collect(Collectors.joining("\n"));
    }
}
