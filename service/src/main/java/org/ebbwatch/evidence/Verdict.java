package org.ebbwatch.evidence;

import java.util.List;
import java.util.Optional;

/**
 * What the judge made of a passage. Two verdicts are the same only if every figure is, bit for bit. Phases and kinds of
 * findings go by their names, so that the verdict of a judge of another version can be held against this one's.
 *
 * @param phases phase changes, in order
 * @param findings findings, in the order they were raised
 * @param results the voltages that phase changes towards release rested on
 * @param end where the passage stands after its last entry
 */
record Verdict(List<Change> phases, List<Found> findings, List<Measured> results, End end) {
    Verdict {
        phases = List.copyOf(phases);
        findings = List.copyOf(findings);
        results = List.copyOf(results);
    }

    /** A phase change, brought about by the entry with that sequence. */
    record Change(long sequence, long eventMillis, String from, String to, String reason) {}

    /**
     * A finding and what it was based on.
     *
     * @param seen in {@code unit}; NaN where it rests on no number
     * @param limit in {@code unit}; NaN where there is none
     * @param cleared when it no longer stood; empty: it stands
     */
    record Found(
            long sequence,
            String kind,
            long eventMillis,
            String phase,
            double seen,
            double limit,
            String unit,
            String line,
            Optional<Moment> cleared) {}

    /** An entry and its event time. */
    record Moment(long sequence, long eventMillis) {}

    /**
     * A voltage a phase change rested on: the last one read before it.
     *
     * @param what {@code underLoad}, {@code rested} or {@code parted}
     * @param sequence of the reading
     * @param limitVolts what V + U had to stay below
     */
    record Measured(
            String what, long sequence, long eventMillis, double volts, double expandedVolts, double limitVolts) {
        boolean isBelow() {
            return volts + expandedVolts < limitVolts;
        }
    }

    /**
     * Where a passage stands.
     *
     * @param over whether it was released or withdrawn
     * @param rounds how many drains began
     * @param ampereHours taken out
     * @param wattHours taken out, at the terminals
     * @param entries how many entries its journal has
     * @param readings how many of them are scans
     */
    record End(
            String phase,
            String reason,
            boolean over,
            int rounds,
            double ampereHours,
            double wattHours,
            long entries,
            long readings) {}

    /** The first thing that is otherwise in another verdict, in words; empty if nothing is. */
    Optional<String> differenceFrom(Verdict other) {
        return firstDifference("phase change", phases, other.phases)
                .or(() -> firstDifference("finding", findings, other.findings))
                .or(() -> firstDifference("result", results, other.results))
                .or(() -> end.equals(other.end)
                        ? Optional.empty()
                        : Optional.of("the end is " + end + ", the record has " + other.end));
    }

    private static Optional<String> firstDifference(String what, List<?> these, List<?> others) {
        for (int i = 0; i < Math.max(these.size(), others.size()); i++) {
            String here = i < these.size() ? these.get(i).toString() : "missing";
            String there = i < others.size() ? others.get(i).toString() : "none";
            if (i >= these.size() || i >= others.size() || !these.get(i).equals(others.get(i))) {
                return Optional.of(what + " " + (i + 1) + " is " + here + ", the record has " + there);
            }
        }
        return Optional.empty();
    }
}
