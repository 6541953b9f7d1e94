package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BreakingChangesTest {
    private static final String BEFORE =
            """
            paths:
              /kites:
                get:
                  parameters:
                  - name: colour
                    in: query
                    schema:
                      $ref: "#/components/schemas/Colour"
                  responses:
                    "200":
                      content:
                        application/json:
                          schema:
                            type: array
                            items:
                              $ref: "#/components/schemas/Kite"
                post:
                  requestBody:
                    required: true
                    content:
                      application/json:
                        schema:
                          $ref: "#/components/schemas/Wish"
                  responses:
                    "201":
                      description: Made
            components:
              schemas:
                Kite:
                  required:
                  - metres
                  type: object
                  properties:
                    metres:
                      type: number
                      format: double
                    colour:
                      allOf:
                      - $ref: "#/components/schemas/Colour"
                Wish:
                  required:
                  - metres
                  type: object
                  properties:
                    metres:
                      type: number
                    tail:
                      type: string
                Colour:
                  type: string
                  enum:
                  - RED
                  - BLUE
            """;

    @Test
    void nothing_is_broken_where_nothing_changed() {
        assertThat(BreakingChanges.between(BEFORE, BEFORE)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/kites:\\n    get: | /kites:\\n    put: | get /kites is gone",
                "/kites: | /balloons: | get /kites is gone",
                "name: colour | name: shade | get /kites no longer takes colour",
                "in: query | in: query\\n        required: true | get /kites newly needs colour",
                "\"200\": | \"204\": | get /kites no longer answers 200",
                "application/json: | text/csv: | get /kites 200 is no longer application/json",
                "format: double | format: float | get /kites 200[].metres had the format double, now float",
                "type: number\\n          format | type: string\\n          format | get /kites 200[].metres had the type number, now string",
                "colour:\\n          allOf | hue:\\n          allOf | get /kites 200[].colour is gone",
                "metres:\\n          type: number\\n          format | metres:\\n          nullable: true\\n          type: number\\n          format | get /kites 200[].metres may newly be null",
                "Kite:\\n      required:\\n      - metres | Kite:\\n      required:\\n      - colour | get /kites 200[].metres may newly be left out",
                "Wish:\\n      required:\\n      - metres | Wish:\\n      required:\\n      - metres\\n      - tail | post /kites body.tail is newly needed",
                "- RED\\n | '' | get /kites ?colour is no longer ever RED"
            })
    void what_breaks_is_named(String part, String instead, String broken) {
        String after = BEFORE.replaceFirst(Pattern.quote(lines(part)), Matcher.quoteReplacement(lines(instead)));
        assertThat(after).isNotEqualTo(BEFORE);

        assertThat(BreakingChanges.between(BEFORE, after)).contains(broken);
    }

    private static String lines(String text) {
        return text.replace("\\n", "\n");
    }

    @Test
    void additions_break_nothing() {
        String after = BEFORE.replace("- BLUE", "- BLUE\n      - GREEN")
                .replace(
                        "tail:\n          type: string",
                        "tail:\n          type: string\n        knots:\n          type: integer")
                .replace("/kites:", "/balloons: {}\n  /kites:");

        assertThat(BreakingChanges.between(BEFORE, after)).isEmpty();
    }
}
