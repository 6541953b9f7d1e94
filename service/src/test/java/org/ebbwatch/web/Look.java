package org.ebbwatch.web;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The colours of a style sheet by name, in the light and in the dark. */
record Look(String sheet) {
    private static final Pattern COLOUR = Pattern.compile("--([a-z-]+): #([0-9a-f]{6});");
    private static final String DARK = "@media (prefers-color-scheme: dark)";

    Colours inTheLight() {
        return colours(sheet.substring(0, sheet.indexOf(DARK)));
    }

    Colours inTheDark() {
        return colours(sheet.substring(sheet.indexOf(DARK)));
    }

    private static Colours colours(String part) {
        Map<String, Integer> byName = new HashMap<>();
        Matcher found = COLOUR.matcher(part);
        while (found.find()) {
            byName.put(found.group(1), Integer.parseInt(found.group(2), 16));
        }
        return new Colours(byName);
    }

    record Colours(Map<String, Integer> byName) {

        /** Contrast ratio, 1 to 21 (source: WCAG 2.2, definitions of contrast ratio and relative luminance). */
        double contrast(String one, String other) {
            double first = luminance(byName.get(one));
            double second = luminance(byName.get(other));
            return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
        }

        private static double luminance(int colour) {
            return 0.2126 * linear(colour >> 16 & 255)
                    + 0.7152 * linear(colour >> 8 & 255)
                    + 0.0722 * linear(colour & 255);
        }

        private static double linear(int level) {
            double share = level / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        }
    }
}
