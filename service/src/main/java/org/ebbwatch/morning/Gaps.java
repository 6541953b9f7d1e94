package org.ebbwatch.morning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.morning.MorningReport.Gap;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;

/** When boards were not heard, told by what their passages found; what several of them found at one time is told once. */
final class Gaps {
    private Gaps() {}

    static List<Gap> of(List<PassageView> passages, BoardTimes times, long sinceWallMillis) {
        List<Gap> gaps = new ArrayList<>();
        for (PassageView passage : passages) {
            for (Gap gap : of(passage, times)) {
                boolean reachesIn = gap.untilWallMillis().orElse(Long.MAX_VALUE) >= sinceWallMillis;
                if (reachesIn && gaps.stream().noneMatch(other -> overlap(gap, other))) {
                    gaps.add(gap);
                }
            }
        }
        gaps.sort(Comparator.comparing(Gap::fromWallMillis));
        return gaps;
    }

    private static List<Gap> of(PassageView passage, BoardTimes times) {
        List<Gap> gaps = new ArrayList<>();
        for (Past past : passage.past()) {
            long wallMillis = times.wallMillis(passage.board(), past.eventMillis());
            boolean silent = past.what().equals(FindingKind.SILENT.name());
            if (silent && past.kind() == Past.Kind.RAISED) {
                gaps.add(new Gap(passage.board(), wallMillis, OptionalLong.empty(), past.line()));
            } else if (silent && past.kind() == Past.Kind.CLEARED && !gaps.isEmpty()) {
                Gap open = gaps.remove(gaps.size() - 1);
                gaps.add(new Gap(open.board(), open.fromWallMillis(), OptionalLong.of(wallMillis), open.line()));
            }
        }
        boolean over = passage.phase().isOver();
        gaps.removeIf(gap -> over && gap.untilWallMillis().isEmpty());
        return gaps;
    }

    private static boolean overlap(Gap one, Gap other) {
        return one.board().equals(other.board())
                && one.fromWallMillis() <= other.untilWallMillis().orElse(Long.MAX_VALUE)
                && other.fromWallMillis() <= one.untilWallMillis().orElse(Long.MAX_VALUE);
    }
}
