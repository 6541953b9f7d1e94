package org.ebbwatch.rack;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Guesses what a mistyped key was meant to be: the known key that the fewest changes of single letters lead to. */
final class NearestKey {

    private NearestKey() {}

    /** The nearest of the known keys; empty where more than a third of the letters would have to change. */
    static Optional<String> to(String typed, List<String> known) {
        String lower = typed.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparingInt(key -> changes(lower, key.toLowerCase(Locale.ROOT))))
                .filter(key -> changes(lower, key.toLowerCase(Locale.ROOT)) <= Math.max(2, key.length() / 3));
    }

    private static int changes(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int replaced = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
