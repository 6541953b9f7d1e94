package org.ebbwatch.profile.modbus;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * As few requests as read everything a scan needs. Spans of one unit and table are taken in order of address and each is added to
 * the request before it as long as the limits allow; no other way needs fewer, for a request can do no better than to begin at
 * the first span not yet read.
 */
final class ReadPlan {
    private static final Comparator<Span> BY_ADDRESS = Comparator.<Span>comparingInt(
                    span -> span.from().unitId())
            .thenComparing(span -> span.from().table())
            .thenComparingInt(span -> span.from().address());

    private ReadPlan() {}

    /**
     * The requests, in order of unit, table and address.
     *
     * @param needed may overlap
     * @param mostGap how many registers or bits that nobody needs may be read between two that are
     * @param mostRegisters how many registers the device gives at once
     */
    static List<Span> of(List<Span> needed, int mostGap, int mostRegisters) {
        List<Span> plan = new ArrayList<>();
        Span open = null;
        for (Span next : needed.stream().sorted(BY_ADDRESS).toList()) {
            Span joined = open == null ? null : join(open, next, mostGap, mostRegisters);
            if (joined == null && open != null) {
                plan.add(open);
            }
            open = joined == null ? next : joined;
        }
        if (open != null) {
            plan.add(open);
        }
        return List.copyOf(plan);
    }

    private static Span join(Span open, Span next, int mostGap, int mostRegisters) {
        Table table = open.from().table();
        int limit = table.isBits() ? table.mostRead() : Math.min(table.mostRead(), mostRegisters);
        int quantity = Math.max(open.end(), next.end()) - open.from().address();
        boolean fits = next.from().unitId() == open.from().unitId()
                && next.from().table() == table
                && next.from().address() - open.end() <= mostGap
                && quantity <= limit;
        return fits ? new Span(open.from(), quantity) : null;
    }
}
