package org.ebbwatch.evidence.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class JsonTextTest {

    @Property
    void whatever_a_person_wrote_reads_back(@ForAll String wrote) {
        byte[] json = JsonText.of(Map.of("tag", wrote));
        assertThat(JsonObject.read(json).text("tag")).isEqualTo(wrote);
    }

    @Property
    void nothing_in_it_can_hide_on_a_screen(@ForAll String wrote) {
        String json = new String(JsonText.of(Map.of(wrote, wrote)), StandardCharsets.UTF_8);
        assertThat(json.codePoints().filter(point -> point != '\n'))
                .noneMatch(point -> Character.isISOControl(point) || Character.getType(point) == Character.FORMAT);
    }

    @Test
    void short_things_stand_on_one_line_and_long_ones_below_each_other() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("short", List.of(1, 2L, 0.5, true, "x"));
        map.put("none", null);
        map.put("unread", Double.NaN);
        map.put("long", List.of("a".repeat(70), Map.of("b", "b".repeat(60))));
        assertThat(new String(JsonText.of(map), StandardCharsets.UTF_8))
                .isEqualTo(
                        """
                        {
                          "short": [1, 2, 0.5, true, "x"],
                          "none": null,
                          "unread": null,
                          "long": [
                            "%s",
                            {"b": "%s"}
                          ]
                        }
                        """
                                .formatted("a".repeat(70), "b".repeat(60)));
    }

    @Test
    void quotes_backslashes_line_ends_and_directions_are_escaped() {
        assertThat(new String(JsonText.of(Map.of("t", "\"\\\n\u202Eü")), StandardCharsets.UTF_8))
                .isEqualTo("{\n  \"t\": \"\\\"\\\\\\u000a\\u202eü\"\n}\n");
    }

    @Test
    void what_json_cannot_hold_is_refused() {
        assertThatThrownBy(() -> JsonText.of(Map.of("x", Double.POSITIVE_INFINITY)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> JsonText.of(Map.of("x", new Object()))).isInstanceOf(IllegalArgumentException.class);
    }
}
