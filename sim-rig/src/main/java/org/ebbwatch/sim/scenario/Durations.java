package org.ebbwatch.sim.scenario;

import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Durations as a scenario writes them: {@code 36h}, {@code 90min}, {@code 1h 30min}, {@code 1.5d}, {@code 250ms}. */
final class Durations {
    static final String ALLOWED = "a number with ms, s, min, h or d, such as 36h, 90min or 1h 30min";

    private static final Pattern PART = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*(ms|s|min|h|d)(?![a-z])\\s*");

    private Durations() {}

    /** Milliseconds, or empty where the text is no duration. */
    static OptionalLong millis(String text) {
        Matcher part = PART.matcher(text);
        double millis = 0;
        int at = 0;
        while (at < text.length() && part.find() && part.start() == at) {
            millis += Double.parseDouble(part.group(1)) * millisPer(part.group(2));
            at = part.end();
        }
        boolean whole = at == text.length() && at > 0 && millis < 1e15;
        return whole ? OptionalLong.of(Math.round(millis)) : OptionalLong.empty();
    }

    private static double millisPer(String unit) {
        return switch (unit) {
            case "ms" -> 1;
            case "s" -> 1e3;
            case "min" -> 60e3;
            case "h" -> 3_600e3;
            default -> 86_400e3;
        };
    }
}
