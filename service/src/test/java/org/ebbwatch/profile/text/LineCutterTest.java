package org.ebbwatch.profile.text;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class LineCutterTest {
    private final List<String> lines = new ArrayList<>();
    private final List<String> dropped = new ArrayList<>();
    private final LineCutter cutter = new LineCutter(new LineCutter.Lines() {
        @Override
        public void line(String line) {
            lines.add(line);
        }

        @Override
        public void dropped(String why) {
            dropped.add(why);
        }
    });
    private long nanos;

    @Test
    void what_came_before_the_first_line_end_is_dropped_in_silence() {
        says("12,3.698\r\n1,3.7\r\n2,3.8\n\n3,3.9\r4,4.0");
        assertThat(lines).containsExactly("1,3.7", "2,3.8", "3,3.9");
        assertThat(dropped).isEmpty();
    }

    @Test
    void a_line_without_end_takes_no_more_memory_and_is_dropped_once() {
        says("\n" + "7".repeat(LineCutter.LONGEST) + "\n");
        says("7".repeat(1_000_000) + "\nok\n");
        assertThat(lines).containsExactly("7".repeat(LineCutter.LONGEST), "ok");
        assertThat(dropped).containsExactly("A line is longer than 1024 characters.");
    }

    @Test
    void a_line_with_control_characters_is_dropped() {
        says("\n1,3.\0007\n1,3.\0337\n1\t3.7\n");
        assertThat(lines).containsExactly("1\t3.7");
        assertThat(dropped).hasSize(2);
    }

    @Test
    void a_line_within_which_the_board_paused_was_cut() {
        says("\n1,3.7");
        nanos += 1_000_000_000;
        says("12\n2,3.8");
        nanos += 999_999_999;
        says("12\n");
        assertThat(lines).containsExactly("2,3.812");
        assertThat(dropped).hasSize(1);
    }

    @Test
    void a_pause_between_lines_cuts_nothing() {
        says("\n1,3.7\n");
        nanos += 60_000_000_000L;
        says("2,3.8\n");
        assertThat(lines).containsExactly("1,3.7", "2,3.8");
    }

    @Property
    void portions_make_no_difference(@ForAll @IntRange(min = 1, max = 20) int portion) {
        LineCutterTest each = new LineCutterTest();
        String text = "cut\r\n1,3.7\r\n2,3.8\r\n\r\n" + "9".repeat(2_000) + "\r\n3,\0073.9\r\n4,4.0\r\n";
        for (int from = 0; from < text.length(); from += portion) {
            each.says(text.substring(from, Math.min(text.length(), from + portion)));
        }
        assertThat(each.lines).containsExactly("1,3.7", "2,3.8", "4,4.0");
        assertThat(each.dropped).hasSize(2);
    }

    private void says(String text) {
        byte[] bytes = text.getBytes(ISO_8859_1);
        cutter.accept(bytes, bytes.length, nanos);
    }
}
