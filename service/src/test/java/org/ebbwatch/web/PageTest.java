package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.web.answer.Attention;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class PageTest {
    @Inject
    private EmbeddedServer server;

    @ParameterizedTest
    @CsvSource({
        "/, text/html",
        "/index.html, text/html",
        "/main.js, application/javascript",
        "/words.js, application/javascript",
        "/uplot/uPlot.esm.js, application/javascript",
        "/uplot/uPlot.min.css, text/css",
        "/rack.css, text/css",
        "/look.css, text/css",
        "/views.css, text/css",
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

        assertThat(paths).contains("main.js", "rack.css", "look.css", "mark.svg", "api/v1/openapi.yml", "health");
        assertThat(paths)
                .allSatisfy(path -> assertThat(Asked.get(server, "/" + path).status())
                        .as(path)
                        .isEqualTo(200));
    }

    @Test
    void no_part_asks_another_host() {
        assertThat((page() + script() + sheets()).replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http://", "https://", "//cdn", "@import");
    }

    @Test
    void no_word_stands_in_a_style_sheet() {
        assertThat(sheets()).doesNotContainPattern("content: \"");
    }

    @Test
    void every_word_of_the_page_stands_in_one_file() {
        assertThat(page().replaceAll("(?s)<title>.*?</title>|<li class=\"at-.*?</li>|<[^>]*>", "")
                        .strip())
                .isEmpty();
        Matcher said = Pattern.compile("data-(?:say|label)=\"([a-zA-Z_.]+)\"").matcher(page());
        assertThat(said.results()
                        .map(found -> found.group(1).replaceFirst(".*\\.", ""))
                        .distinct())
                .hasSizeGreaterThan(20)
                .allSatisfy(key -> assertThat(words()).containsPattern("\\b" + key + ": "));
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
        assertThat(words()).contains("Keep away and follow your emergency plan.");
    }

    @Test
    void the_page_says_when_it_is_stopped_and_when_it_shows_a_model() {
        assertThat(words()).contains("Stopped. No answer from the service", "No scan since", "What stands here is old");
        assertThat(words()).contains("simulated");
        assertThat(words()).contains("no real cell is there");
    }

    @Test
    void the_page_uses_the_projects_words() {
        assertThat(words())
                .contains(
                        "\"check-in\"",
                        "\"drain\"",
                        "\"rest\"",
                        "\"tie-off\"",
                        "\"released\"",
                        "\"held\"",
                        "Needs a person");
        assertThat(words().toLowerCase(Locale.ROOT))
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
                        Cover.values(),
                        Act.values(),
                        Matter.values(),
                        Proof.values(),
                        Condition.values(),
                        ProtectionBoard.values(),
                        Work.values())
                .flatMap(Stream::of);
        assertThat(sayings.filter(saying -> saying != ChannelRole.CELL))
                .allSatisfy(saying -> assertThat(words()).containsPattern("\\b" + saying.name() + ": \""));
    }

    @Test
    void what_the_scripts_take_from_each_other_is_served() {
        assertThat(scripts())
                .hasSizeGreaterThan(10)
                .allSatisfy((part, text) -> assertThat(text).as(part).isNotEmpty());
    }

    @Test
    void alarms_stand_first_and_say_state_since_when_and_what_to_do() {
        assertThat(page().indexOf("id=\"alarms\"")).isPositive().isLessThan(page().indexOf("id=\"needs\""));
        assertThat(page()).contains("class=\"skip\" href=\"#alarms\"");
        assertThat(words()).contains("Alarms");
        assertThat(script()).contains("api/v1/alarms", "alarm.toDo", "alarm.cause", "raisedAt");
        assertThat(words()).contains("No alarm.", "Alarms do not get out by the");
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
                .contains("class=\"skip\" href=\"#contents\"", "id=\"contents\"");
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
        return Asked.get(server, "/words.js").body();
    }

    private String sheets() {
        return Stream.of("/look.css", "/rack.css", "/views.css", "/link.css")
                .map(path -> Asked.get(server, path).body())
                .collect(Collectors.joining("\n"));
    }

    private String script() {
        return String.join("\n", scripts().values());
    }

    /** Every script that the first one leads to, by its name. */
    private Map<String, String> scripts() {
        Map<String, String> found = new LinkedHashMap<>();
        Deque<String> toRead = new ArrayDeque<>(List.of("main.js"));
        while (!toRead.isEmpty()) {
            String name = toRead.pop();
            Asked script = Asked.get(server, "/" + name);
            assertThat(script.status()).as(name).isEqualTo(200);
            found.put(name, script.body());
            Pattern.compile("from \"\\./([a-z.]+)\"")
                    .matcher(script.body())
                    .results()
                    .map(part -> part.group(1))
                    .filter(part -> !found.containsKey(part))
                    .forEach(toRead::push);
        }
        return found;
    }
}
