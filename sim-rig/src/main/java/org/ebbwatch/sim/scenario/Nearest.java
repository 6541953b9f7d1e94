package org.ebbwatch.sim.scenario;

import java.util.Collection;
import java.util.Locale;

/** Finds the known word that someone may have meant. */
final class Nearest {
    private Nearest() {}

    /** {@code "; did you mean 'x'?"}, or nothing where no known word is near. */
    static String hint(String typed, Collection<String> known) {
        String nearest = null;
        int least = Math.max(2, typed.length() / 3) + 1;
        for (String word : known) {
            int apart = edits(typed.toLowerCase(Locale.ROOT), word.toLowerCase(Locale.ROOT));
            if (apart < least) {
                least = apart;
                nearest = word;
            }
        }
        return nearest == null ? "" : "; did you mean '" + nearest + "'?";
    }

    /** Fewest insertions, deletions, replacements and exchanges of neighbours that make one word of the other. */
    private static int edits(String from, String to) {
        int[][] least = new int[from.length() + 1][to.length() + 1];
        for (int i = 0; i <= from.length(); i++) {
            for (int j = 0; j <= to.length(); j++) {
                if (i == 0 || j == 0) {
                    least[i][j] = i + j;
                    continue;
                }
                int replaced = least[i - 1][j - 1] + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                least[i][j] = Math.min(replaced, 1 + Math.min(least[i - 1][j], least[i][j - 1]));
                boolean exchanged = i > 1
                        && j > 1
                        && from.charAt(i - 1) == to.charAt(j - 2)
                        && from.charAt(i - 2) == to.charAt(j - 1);
                if (exchanged) {
                    least[i][j] = Math.min(least[i][j], least[i - 2][j - 2] + 1);
                }
            }
        }
        return least[from.length()][to.length()];
    }
}
