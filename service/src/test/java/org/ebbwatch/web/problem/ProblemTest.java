package org.ebbwatch.web.problem;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import org.ebbwatch.web.Asked;
import org.ebbwatch.web.InventedRack;
import org.ebbwatch.web.InventedWorkshop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class ProblemTest {
    private static final String KNOWN = "/api/v1/passages/" + InventedWorkshop.id(1);

    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @BeforeEach
    void a_rack_that_works() {
        rack.show(InventedWorkshop.mixed());
    }

    @Test
    void an_identifier_that_is_none_is_refused_by_name() {
        JsonNode problem = problem(Asked.get(server, "/api/v1/passages/kite-1"), 400, "bad-parameter");

        assertThat(detail(problem)).contains("id cannot be \"kite-1\"").contains("/api/v1/passages");
        assertThat(problem.get("instance").getStringValue()).isEqualTo("/api/v1/passages/kite-1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/trace"})
    void a_passage_that_is_not_there_is_not_found(String rest) {
        Asked answer = Asked.get(server, "/api/v1/passages/" + InventedWorkshop.id(99) + rest);

        assertThat(detail(problem(answer, 404, "unknown-passage")))
                .contains(InventedWorkshop.id(99).toString())
                .contains("Ask /api/v1/passages");
    }

    @Test
    void an_unknown_phase_is_refused_with_the_phases_there_are() {
        JsonNode problem = problem(Asked.get(server, "/api/v1/passages?phase=SLEEP"), 400, "bad-parameter");

        assertThat(detail(problem)).contains("phase cannot be \"SLEEP\"").contains("CHECK_IN, DRAIN, REST");
    }

    @ParameterizedTest
    @ValueSource(strings = {"9", "10001", "-1"})
    void too_few_or_too_many_points_are_refused_with_the_range(String points) {
        JsonNode problem = problem(Asked.get(server, KNOWN + "/trace?points=" + points), 400, "bad-parameter");

        assertThat(detail(problem)).contains("points cannot be " + points).contains("10 to 10000");
    }

    @ParameterizedTest
    @ValueSource(strings = {"10", "10000"})
    void the_ends_of_the_range_are_allowed(String points) {
        assertThat(Asked.get(server, KNOWN + "/trace?points=" + points).status())
                .isEqualTo(200);
    }

    @Test
    void points_that_are_no_number_are_refused() {
        JsonNode problem = problem(Asked.get(server, KNOWN + "/trace?points=many"), 400, "bad-parameter");

        assertThat(detail(problem)).contains("points cannot be \"many\"").contains("whole number");
    }

    @ParameterizedTest
    @CsvSource({
        "/api/v1/passages?fase=HELD, it takes phase",
        "/api/v1/rack?points=10, it takes none",
        "/api/v1/passages/01931f00-0000-7000-8000-000000000001/trace?id=3, 'it takes from, points, to'"
    })
    void a_parameter_that_no_route_takes_is_refused_and_not_ignored(String path, String hint) {
        assertThat(detail(problem(Asked.get(server, path), 400, "bad-parameter")))
                .contains(hint);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/v1/kites", "/api/v2/rack", "/favicon.ico", "/beans", "/env", "/loggers", "/stop"})
    void an_unknown_path_is_a_problem_too(String path) {
        assertThat(detail(problem(Asked.get(server, path), 404, "unknown-path")))
                .startsWith(path + " is not known.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"POST", "PUT", "PATCH", "DELETE"})
    void what_is_for_reading_only_cannot_be_written(String method) {
        Asked answer = Asked.ask(server, method, "/api/v1/rack");

        assertThat(detail(problem(answer, 405, "wrong-method")))
                .contains(method)
                .contains("the header Allow");
        assertThat(answer.header("Allow")).contains("GET");
    }

    @Test
    void a_form_that_cannot_be_given_is_a_problem_too() {
        problem(Asked.ask(server, "GET", "/api/v1/rack", "Accept", "image/png"), 406, "not-acceptable");
    }

    @Test
    void a_browser_too_gets_problem_details_for_an_unknown_path() {
        problem(Asked.ask(server, "GET", "/nowhere", "Accept", "text/html"), 404, "unknown-path");
    }

    @Test
    void a_fault_inside_tells_the_client_nothing_of_the_inside() {
        rack.breakDown();

        Asked answer = Asked.get(server, "/api/v1/rack");

        assertThat(detail(problem(answer, 500, "fault"))).contains("Go and look at the rack itself");
        assertThat(answer.body())
                .doesNotContain("secret")
                .doesNotContain("Exception")
                .doesNotContain("org.ebbwatch");
    }

    @ParameterizedTest
    @EnumSource(ProblemKind.class)
    void every_type_of_problem_can_be_followed(ProblemKind kind) {
        JsonNode meaning = Asked.get(server, kind.type()).json();

        assertThat(meaning.get("title").getStringValue()).isEqualTo(kind.title());
        assertThat(meaning.get("advice").getStringValue()).isNotBlank();
        assertThat(meaning.get("status").getIntValue()).isEqualTo(kind.status().getCode());
    }

    @Test
    void a_type_of_problem_that_is_none_is_an_unknown_path() {
        problem(Asked.get(server, "/api/v1/problems/wrong-mood"), 404, "unknown-path");
    }

    private static JsonNode problem(Asked answer, int status, String type) {
        assertThat(answer.status()).as(answer.body()).isEqualTo(status);
        assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
        JsonNode problem = answer.json();
        assertThat(problem.get("type").getStringValue()).isEqualTo("/api/v1/problems/" + type);
        assertThat(problem.get("status").getIntValue()).isEqualTo(status);
        assertThat(problem.get("title").getStringValue()).isNotBlank();
        return problem;
    }

    private static String detail(JsonNode problem) {
        return problem.get("detail").getStringValue();
    }
}
