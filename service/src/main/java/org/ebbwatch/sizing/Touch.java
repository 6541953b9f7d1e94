package org.ebbwatch.sizing;

import java.util.Arrays;

/**
 * How long skin bears a hot uncoated metal surface. Thresholds from memory of ISO 13732-1; other surfaces let heat through more
 * slowly and are taken for metal here.
 */
public enum Touch {
    /** Below 43 degrees: for hours. */
    HARMLESS(43, "warm at most; skin bears it"),
    /** Up to 48 degrees: not for hours. */
    NOT_FOR_HOURS(48, "burns skin that rests on it for hours"),
    /** Up to 51 degrees: not for ten minutes. */
    NOT_FOR_MINUTES(51, "burns skin within ten minutes"),
    /** Up to 60 degrees: not for a minute. */
    NOT_FOR_A_MINUTE(60, "burns skin within a minute"),
    /** Above: within seconds. */
    BURNS(Double.POSITIVE_INFINITY, "burns skin within seconds; keep hands, paper, plastic and cells away from it");

    private final double belowCelsius;
    private final String words;

    Touch(double belowCelsius, String words) {
        this.belowCelsius = belowCelsius;
        this.words = words;
    }

    /** Of a surface that warm. */
    public static Touch at(double celsius) {
        return Arrays.stream(values())
                .filter(touch -> celsius < touch.belowCelsius)
                .findFirst()
                .orElse(BURNS);
    }

    /** What it does to skin. */
    public String words() {
        return words;
    }
}
