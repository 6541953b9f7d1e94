package org.ebbwatch.alarm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import org.ebbwatch.alarm.book.Report;
import org.ebbwatch.alarm.book.WarmthTrail;
import org.ebbwatch.judge.MildWarming;
import org.ebbwatch.passage.PassageStanding;

/**
 * Looks at the cells whose warming is slight: one that gets to the limit for any cell, or warms fast, is no longer one of many. The
 * judge does not say so, because for it the warming goes on. Not thread-safe.
 */
final class WarmingCells {
    private final Map<UUID, PassageStanding> open = new LinkedHashMap<>();
    private final Map<UUID, WarmthTrail> trails = new HashMap<>();
    private final Set<UUID> fast = new HashSet<>();

    /** What the alarm book is to be told of a passage that changed. */
    Report report(PassageStanding passage) {
        UUID id = passage.card().id();
        if (passage.phase().isOver()) {
            open.remove(id);
            trails.remove(id);
            fast.remove(id);
        } else {
            open.put(id, passage);
        }
        if (passage.findings().stream().noneMatch(MildWarming::is)) {
            fast.remove(id);
        } else if (isFast(id)) {
            fast.add(id);
        }
        return StandingReport.of(passage, fast.contains(id));
    }

    private boolean isFast(UUID id) {
        return trails.containsKey(id) && trails.get(id).isFast();
    }

    /**
     * Reads every cell's thermometer; what the book is to be told of those that have become hot or fast.
     *
     * @param celsiusOf the temperature of a passage's cell now; NaN where there is none
     */
    List<Report> look(ToDoubleFunction<UUID> celsiusOf, ToLongFunction<String> eventMillis) {
        List<Report> turned = new ArrayList<>();
        for (PassageStanding passage : open.values()) {
            UUID id = passage.card().id();
            double celsius = celsiusOf.applyAsDouble(id);
            WarmthTrail trail = trails.computeIfAbsent(id, none -> new WarmthTrail());
            trail.add(eventMillis.applyAsLong(passage.card().board()), celsius);
            boolean mild = !fast.contains(id) && passage.findings().stream().anyMatch(MildWarming::is);
            boolean hot = celsius >= passage.card().procedure().heat().warmCelsius();
            if (mild && (hot || trail.isFast())) {
                fast.add(id);
                turned.add(StandingReport.of(passage, true));
            }
        }
        return turned;
    }
}
