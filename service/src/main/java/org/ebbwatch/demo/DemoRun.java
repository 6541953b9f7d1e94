package org.ebbwatch.demo;

import java.io.IOException;
import java.io.PrintStream;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.rack.RunningRack;

/** Lives the story through from check-in to the last cell, telling what happens as it happens. */
public final class DemoRun {
    private static final long LOOK_MILLIS = 10;
    private static final long PROGRESS_NANOS = 500_000_000;
    private static final long STUCK_NANOS = 60_000_000_000L;

    private final Workshop workshop = Workshop.story();
    private final PrintStream out;
    private final boolean live;
    private final Map<UUID, Integer> told = new HashMap<>();
    private final Set<String> silences = new HashSet<>();

    /**
     * A run not yet begun.
     *
     * @param out where it is told
     * @param live whether {@code out} is a terminal that can overwrite its last line
     */
    public DemoRun(PrintStream out, boolean live) {
        this.out = out;
        this.live = live;
    }

    /**
     * Runs to the end of the story.
     *
     * @param rackOver makes the running service over the boards' ports
     * @return whether everything scripted was found and nothing else
     * @throws IOException if this machine gives no pseudo-terminal
     */
    public boolean run(int speed, long seed, Function<List<RunningRack.BoardPort>, RunningRack> rackOver)
            throws IOException, InterruptedException {
        try (var boards = new SimulatedRack(workshop, seed, speed);
                RunningRack rack = rackOver.apply(boards.ports())) {
            boards.ports()
                    .forEach(port -> out.println("  board    " + port.name() + " on "
                            + boards.board(port.name()).address()));
            rack.start();
            checkIn(rack);
            var table = new DemoTable(workshop, live(rack, new Technician(new RackHands(rack, boards))));
            out.println();
            out.print(table.text());
            return table.isAsScripted();
        }
    }

    private void checkIn(RunningRack rack) throws InterruptedException {
        long since = System.nanoTime();
        while (!rack.view().boards().stream().allMatch(board -> board.eventMillis() >= 0)) {
            if (System.nanoTime() - since > STUCK_NANOS) {
                throw new IllegalStateException("the simulated boards cannot be reached: "
                        + rack.view().boards().stream().map(BoardView::detail).toList());
            }
            Thread.sleep(LOOK_MILLIS);
        }
        out.printf("%nSixteen cells are checked in.%n%n");
        for (Bench bench : workshop.boards()) {
            for (int channel = 0; channel < bench.cells().size(); channel++) {
                int at = channel;
                rack.with(watch -> watch.checkIn(
                        bench.name(),
                        at,
                        bench.cells().get(at).card(),
                        Procedure.careful(),
                        System.currentTimeMillis()));
            }
        }
    }

    /** Until every passage is settled; gives the rack as it is then. */
    private RackView live(RunningRack rack, Technician technician) throws InterruptedException {
        long toldNanos = 0;
        long movedNanos = System.nanoTime();
        long movedMillis = -1;
        while (true) {
            RackView view = rack.view();
            tell(view);
            if (view.passages().stream().allMatch(DemoRun::isSettled)) {
                clearLine();
                return view;
            }
            for (PassageView passage : view.passages()) {
                technician.attend(passage, eventMillis(view, passage.board()));
            }
            long now = System.nanoTime();
            long event =
                    view.boards().stream().mapToLong(BoardView::eventMillis).sum();
            if (event != movedMillis) {
                movedMillis = event;
                movedNanos = now;
            } else if (now - movedNanos > STUCK_NANOS) {
                throw new IllegalStateException("the story does not go on: " + view.boards());
            }
            if (live && now - toldNanos > PROGRESS_NANOS) {
                toldNanos = now;
                progress(view);
            }
            Thread.sleep(LOOK_MILLIS);
        }
    }

    private static boolean isSettled(PassageView passage) {
        return passage.phase().isOver() || passage.phase() == Phase.HELD;
    }

    private static long eventMillis(RackView view, String board) {
        return view.boards().stream()
                .filter(candidate -> candidate.name().equals(board))
                .mapToLong(BoardView::eventMillis)
                .findFirst()
                .orElse(0);
    }

    private void tell(RackView view) {
        for (PassageView passage : view.passages()) {
            int from = told.getOrDefault(passage.id(), 0);
            for (Past past : passage.past().subList(from, passage.past().size())) {
                if (isWorthTelling(passage, past)) {
                    clearLine();
                    out.printf(
                            "%-12s %-8s %-10s %-12s %s%n",
                            StoryTime.of(past.eventMillis()),
                            passage.board() + ':' + passage.channel(),
                            passage.tag(),
                            past.what(),
                            past.line());
                }
            }
            told.put(passage.id(), passage.past().size());
        }
    }

    /** A silence is the board's: it is told once, not by every cell. */
    private boolean isWorthTelling(PassageView passage, Past past) {
        boolean silence = past.what().equals(FindingKind.SILENT.name());
        return past.kind() != Past.Kind.CLEARED && (!silence || silences.add(passage.board() + past.eventMillis()));
    }

    private void progress(RackView view) {
        var counts = new StringBuilder();
        for (Phase phase : Phase.values()) {
            long count = view.passages().stream()
                    .filter(passage -> passage.phase() == phase)
                    .count();
            if (count > 0) {
                counts.append("  ").append(phase).append(' ').append(count);
            }
        }
        out.printf("\r\033[K%s %s", StoryTime.of(view.boards().get(0).eventMillis()), counts);
        out.flush();
    }

    private void clearLine() {
        if (live) {
            out.print("\r\033[K");
        }
    }
}
