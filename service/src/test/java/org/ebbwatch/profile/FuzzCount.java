package org.ebbwatch.profile;

import java.util.Map;
import java.util.TreeMap;

/**
 * What a decoder was fed and what it made of it. A reading is wrong if no intact frame, line or answer held it. Damage that the
 * format itself cannot show is counted apart, by what was done, as tried and as passed.
 */
public final class FuzzCount {
    private final Map<String, long[]> unnoticeable = new TreeMap<>();
    private long bytes;
    private long sent;
    private long damaged;
    private long delivered;
    private long wrong;
    private String firstWrong = "";

    public void fed(int count) {
        bytes += count;
    }

    public void sent() {
        sent++;
    }

    public void damaged() {
        damaged++;
    }

    /** A reading came out that was sent. */
    public void right() {
        delivered++;
    }

    /**
     * A reading came out that was not sent.
     *
     * @param after what was fed last
     */
    public void wrong(String after) {
        wrong++;
        firstWrong = wrong == 1 ? after : firstWrong;
    }

    /** What was fed before the first reading that was not sent; empty where there was none. */
    public String firstWrong() {
        return firstWrong;
    }

    /** Damage that the format cannot show in every case. */
    public void unnoticeable(String how, boolean passed) {
        long[] triedAndPassed = unnoticeable.computeIfAbsent(how, key -> new long[2]);
        triedAndPassed[0]++;
        triedAndPassed[1] += passed ? 1 : 0;
    }

    public long bytes() {
        return bytes;
    }

    public long sentIntact() {
        return sent;
    }

    public long readings() {
        return delivered;
    }

    public long wrongReadings() {
        return wrong;
    }

    /** One row of a table of results. */
    public String row(String decoder, double seconds) {
        return String.format(
                "| %s | %,d | %,d | %,d | %,d | %,d | %.0f |",
                decoder, bytes, sent, damaged, delivered, wrong, seconds);
    }

    /** One line for each sort of damage that the format cannot show. */
    public String unnoticeable() {
        StringBuilder lines = new StringBuilder();
        unnoticeable.forEach(
                (how, counts) -> lines.append(String.format("%s: %,d tried, %,d passed%n", how, counts[0], counts[1])));
        return lines.toString();
    }
}
