package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;

class EveningTextTest {
    private static List<String> lines(String... points) throws IOException {
        String text = "{\"points\": [" + String.join(",", points) + "]}";
        return EveningText.lines(JsonMapper.createDefault().readValue(text, JsonNode.class));
    }

    private static String point(String proof, String about) {
        return """
            {"matter": "LOAD", "about": "%s", "proof": "%s", "expected": "it opens", "seen": "it does not",
             "toDo": "Take it off."}
            """
                .formatted(about, proof);
    }

    @Test
    void what_failed_comes_first_then_what_nobody_knows_and_each_says_what_to_do() throws IOException {
        assertThat(lines(point("PASSED", "A"), point("NOT_PROVEN", "B"), point("FAILED", "C")))
                .containsSubsequence(
                        "FAILED       LOAD C: it does not",
                        "             to do:    Take it off.",
                        "not proven   LOAD B: it does not",
                        "1 points passed, 1 failed, 1 not proven.",
                        "Do not leave the rack like this.");
    }

    @Test
    void even_a_check_that_passed_promises_nothing() throws IOException {
        assertThat(lines(point("PASSED", "A")))
                .anyMatch(line -> line.contains("no promise"))
                .noneMatch(line -> line.contains("Do not leave"));
    }

    @Test
    void without_a_token_nothing_is_asked() {
        var err = new StringWriter();
        int exit = Ebbwatch.commandLine()
                .setErr(new PrintWriter(err, true))
                .execute("evening-check", "--service", "http://127.0.0.1:1");
        assertThat(exit).isEqualTo(3);
        assertThat(err.toString()).containsAnyOf("EBBWATCH_TOKEN", "no service answers");
    }
}
