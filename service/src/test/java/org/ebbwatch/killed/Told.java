package org.ebbwatch.killed;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;

/**
 * How a passage stands, as one line between two processes.
 *
 * @param eventMillis event time of the board's last scan; -1 before the first in this run
 * @param remainingMillis what the running watch has still to go
 */
record Told(
        String tag, Phase phase, long eventMillis, long remainingMillis, Set<Wish> wishes, Set<FindingKind> findings) {

    static String of(PassageView passage, long eventMillis) {
        return String.join(
                "|",
                passage.tag(),
                passage.phase().name(),
                Long.toString(eventMillis),
                Long.toString(passage.remainingMillis()),
                passage.standing().stream().map(Wish::name).collect(Collectors.joining(",")),
                passage.findings().stream().map(it -> it.kind().name()).collect(Collectors.joining(",")));
    }

    static Told read(String line) {
        String[] parts = line.split("\\|", -1);
        return new Told(
                parts[0],
                Phase.valueOf(parts[1]),
                Long.parseLong(parts[2]),
                Long.parseLong(parts[3]),
                names(parts[4]).stream().map(Wish::valueOf).collect(Collectors.toSet()),
                names(parts[5]).stream().map(FindingKind::valueOf).collect(Collectors.toSet()));
    }

    private static List<String> names(String part) {
        return part.isEmpty() ? List.of() : Arrays.asList(part.split(","));
    }
}
