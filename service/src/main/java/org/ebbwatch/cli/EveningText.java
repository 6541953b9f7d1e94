package org.ebbwatch.cli;

import io.micronaut.json.tree.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** An evening check as lines of text: what failed first, then what is not proven; what passed is only counted. */
final class EveningText {
    private static final Map<String, String> MARKS =
            Map.of("PASSED", "passed", "FAILED", "FAILED", "NOT_PROVEN", "not proven");

    private EveningText() {}

    /** What came of a check that is over. */
    static List<String> lines(JsonNode check) {
        List<String> lines = new ArrayList<>();
        int failed = add(check, "FAILED", lines);
        int unknown = add(check, "NOT_PROVEN", lines);
        int passed = check.get("points").size() - failed - unknown;
        lines.add(passed + " points passed, " + failed + " failed, " + unknown + " not proven.");
        lines.add(
                failed + unknown == 0
                        ? "What this check can prove is proven. That is no promise: cells can burn all the same."
                        : "Do not leave the rack like this.");
        lines.add("Your local code, your insurer and your fire service come first; see docs/safety.md.");
        return lines;
    }

    private static int add(JsonNode check, String proof, List<String> lines) {
        int count = 0;
        for (JsonNode point : check.get("points").values()) {
            if (text(point, "proof").equals(proof)) {
                count++;
                lines.add(line(point));
                lines.add("             expected: " + text(point, "expected"));
                lines.add("             to do:    " + text(point, "toDo"));
            }
        }
        return count;
    }

    /** One point in one line. */
    static String line(JsonNode point) {
        String what = (text(point, "matter") + " " + text(point, "about")).strip();
        return String.format("%-12s %s: %s", MARKS.get(text(point, "proof")), what, text(point, "seen"));
    }

    private static String text(JsonNode node, String field) {
        return node.get(field).getStringValue();
    }
}
