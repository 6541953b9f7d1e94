package org.ebbwatch.demo;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;

/** What became of every cell, held against the script. */
final class DemoTable {
    private static final String ROW = "%-10s %-9s %-10s %9s  %s%n";

    private final List<String> surprises = new ArrayList<>();
    private final StringBuilder text = new StringBuilder();

    DemoTable(Workshop workshop, RackView end) {
        text.append(String.format(ROW, "cell", "channel", "end", "taken out", "what was found, and when"));
        int cells = 0;
        int released = 0;
        for (Bench bench : workshop.boards()) {
            for (int channel = 0; channel < bench.cells().size(); channel++) {
                PassageView passage = passageOn(end, bench.name(), channel);
                cells++;
                released += passage.phase() == Phase.RELEASED ? 1 : 0;
                row(passage);
                compare(bench, bench.cells().get(channel), passage);
            }
        }
        text.append(String.format(
                "%n%d of %d cells released as emptied, %d held back for a person.%n",
                released, cells, cells - released));
        text.append(
                surprises.isEmpty()
                        ? "All that was scripted to go wrong was found on its channel, and nothing on the others.\n"
                        : "Not as scripted:\n  " + String.join("\n  ", surprises) + "\n");
    }

    String text() {
        return text.toString();
    }

    boolean isAsScripted() {
        return surprises.isEmpty();
    }

    private void row(PassageView passage) {
        String found = passage.past().stream()
                .filter(past -> past.kind() == Past.Kind.RAISED)
                .map(past -> past.what() + " (" + StoryTime.of(past.eventMillis()) + ")")
                .collect(Collectors.joining(", "));
        text.append(String.format(
                ROW,
                passage.tag(),
                passage.board() + ':' + passage.channel(),
                passage.phase(),
                String.format("%.2f Ah", passage.ampereHours()),
                found.isEmpty() ? "-" : found));
        if (passage.phase() != Phase.RELEASED) {
            text.append(String.format(ROW, "", "", "", "", passage.reason()));
        }
    }

    private void compare(Bench bench, StoryCell cell, PassageView passage) {
        Set<FindingKind> found = EnumSet.noneOf(FindingKind.class);
        passage.past().stream()
                .filter(past -> past.kind() == Past.Kind.RAISED)
                .forEach(past -> found.add(FindingKind.valueOf(past.what())));
        Set<FindingKind> expected = EnumSet.noneOf(FindingKind.class);
        expected.addAll(cell.must());
        if (bench.fallsSilent()) {
            expected.add(FindingKind.SILENT);
        }
        Set<FindingKind> missed = new TreeSet<>(expected);
        missed.removeAll(found);
        Set<FindingKind> unasked = new TreeSet<>(found);
        unasked.removeAll(expected);
        unasked.removeAll(cell.may());
        if (!missed.isEmpty()) {
            surprises.add(passage.tag() + ": " + missed + " was scripted and not found");
        }
        if (!unasked.isEmpty()) {
            surprises.add(passage.tag() + ": " + unasked + " was found and not scripted");
        }
        if (cell.released() != (passage.phase() == Phase.RELEASED)) {
            surprises.add(passage.tag() + ": ended in " + passage.phase());
        }
    }

    private static PassageView passageOn(RackView view, String board, int channel) {
        return view.passages().stream()
                .filter(passage -> passage.board().equals(board) && passage.channel() == channel)
                .findFirst()
                .orElseThrow();
    }
}
