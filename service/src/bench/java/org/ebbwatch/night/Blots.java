package org.ebbwatch.night;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Blots of one sort: how many beside which trouble, and a few of each to look at. */
final class Blots {
    private static final int EXAMPLES_A_TROUBLE = 2;
    private static final int EXAMPLES_MOST = 8;

    private final Blot.Kind kind;
    private final Map<Trouble, Integer> counts = new EnumMap<>(Trouble.class);
    private final List<Blot> examples = new ArrayList<>();

    Blots(Blot.Kind kind) {
        this.kind = kind;
    }

    Blot.Kind kind() {
        return kind;
    }

    void add(Blot blot) {
        counts.merge(blot.trouble(), 1, Integer::sum);
        keep(blot);
    }

    private void keep(Blot blot) {
        long alike = examples.stream()
                .filter(kept -> kept.trouble() == blot.trouble())
                .count();
        if (alike < EXAMPLES_A_TROUBLE && examples.size() < EXAMPLES_MOST) {
            examples.add(blot);
        }
    }

    void add(Blots other) {
        other.counts.forEach((trouble, count) -> counts.merge(trouble, count, Integer::sum));
        other.examples.forEach(this::keep);
    }

    int count() {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    Map<Trouble, Integer> counts() {
        return counts;
    }

    List<Blot> examples() {
        return examples;
    }
}
