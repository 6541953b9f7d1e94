package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.ebbwatch.alarm.outlet.BodyTemplate.ContentType;
import org.junit.jupiter.api.Test;

class BodyTemplateTest {

    private static String filled(String text, ContentType type, String what) {
        return new BodyTemplate(text, type).filled(Map.of("what", what, "number", "7"));
    }

    @Test
    void fields_stand_where_they_are_named_and_braces_of_json_are_left_alone() {
        assertThat(filled("{\"a\": {\"n\": ${number}}, \"b\": \"${what} ${what}\"}", ContentType.JSON, "hot"))
                .isEqualTo("{\"a\": {\"n\": 7}, \"b\": \"hot hot\"}");
    }

    @Test
    void a_field_the_message_says_nothing_of_is_empty() {
        assertThat(filled("[${cause.tag}]", ContentType.TEXT, "")).isEqualTo("[]");
    }

    @Test
    void what_a_person_wrote_cannot_name_a_field_or_a_group() {
        assertThat(filled("${what}", ContentType.TEXT, "${number} $1 \\2")).isEqualTo("${number} $1 \\2");
    }

    @Test
    void plain_text_is_left_as_it_is() {
        assertThat(filled("${what}", ContentType.TEXT, "\"5\" \\ µ\n")).isEqualTo("\"5\" \\ µ\n");
    }

    /** RFC 8259, section 7, as another reader of JSON understands it. */
    @Property
    void any_text_survives_the_way_through_json(@ForAll String what) throws IOException {
        String sent = filled("{\"text\": \"<${what}>\"}", ContentType.JSON, what);

        JsonNode read = JsonMapper.createDefault().readValue(sent, JsonNode.class);
        assertThat(read.get("text").getStringValue()).isEqualTo('<' + what + '>');
    }

    @Test
    void a_field_there_is_not_is_refused_with_those_there_are() {
        assertThatThrownBy(() -> new BodyTemplate("${wat}", ContentType.JSON))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("${wat} is no field of a message; there are messageId, number,");
    }
}
