package org.ebbwatch.morning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.plan.Errand;
import org.ebbwatch.plan.Task;

/**
 * What happened on the rack since the evening, and what the day asks for.
 *
 * @param sinceWallMillis the evening
 * @param wallMillis when it was made
 * @param cells every cell that is on the rack, or left it since the evening, in the order of boards and channels
 * @param alarms every alarm raised since the evening, and every older one that is alive, oldest first
 * @param gaps when a board was not heard, oldest first
 * @param unwatched a line for each cell nobody watches
 * @param today what is to do within 24 h, soonest first
 */
public record MorningReport(
        long sinceWallMillis,
        long wallMillis,
        List<CellLine> cells,
        List<AlarmLine> alarms,
        List<Gap> gaps,
        List<String> unwatched,
        List<Errand> today) {
    private static final long DAY_MILLIS = 86_400_000;
    private static final int MOST_NAMED = 3;

    public MorningReport {
        cells = List.copyOf(cells);
        alarms = List.copyOf(alarms);
        gaps = List.copyOf(gaps);
        unwatched = List.copyOf(unwatched);
        today = List.copyOf(today);
    }

    /**
     * One cell.
     *
     * @param evening the phase it was in then; empty: it was not checked in yet, or that is too long ago to be known
     * @param now the phase it is in
     * @param raised what was found since the evening, each kind once
     * @param next what it waits for; empty: it is over
     */
    public record CellLine(
            UUID passage,
            String tag,
            String board,
            int channel,
            Optional<Phase> evening,
            Phase now,
            List<FindingKind> raised,
            Optional<Errand> next) {
        public CellLine {
            raised = List.copyOf(raised);
        }

        /** Whether something is wrong with it now, or it goes on in no other way. */
        public boolean needsSomebody() {
            return next.filter(errand ->
                            errand.waitsAlready() && (errand.task() == Task.LOOK || errand.task() == Task.DECIDE))
                    .isPresent();
        }
    }

    /**
     * One alarm.
     *
     * @param wallMillis when it was raised
     * @param about the cells, or the board, or the rack
     * @param state the state it is in; NORMAL: it is over and somebody acknowledged it
     */
    public record AlarmLine(long wallMillis, AlarmKind kind, String about, String line, AlarmState state) {}

    /**
     * A stretch in which a board was not heard.
     *
     * @param fromWallMillis when that was found
     * @param untilWallMillis when it was heard again; empty: it is not
     */
    public record Gap(String board, long fromWallMillis, OptionalLong untilWallMillis, String line) {}

    /** The report of these facts. */
    public static MorningReport of(MorningFacts facts) {
        var times = new BoardTimes(facts.rack());
        long since = facts.sinceWallMillis();
        Map<UUID, Errand> errands = new HashMap<>();
        facts.plan().errands().forEach(errand -> errands.put(errand.passage(), errand));
        List<CellLine> cells = new ArrayList<>();
        for (PassageView passage : facts.rack().passages()) {
            if (!passage.phase().isOver() || lastChange(passage, times) >= since) {
                cells.add(cell(passage, Optional.ofNullable(errands.get(passage.id())), times, since));
            }
        }
        cells.sort(Comparator.comparing(CellLine::board).thenComparing(CellLine::channel));
        return new MorningReport(
                since,
                facts.wallMillis(),
                cells,
                alarms(facts),
                Gaps.of(facts.rack().passages(), times, since),
                facts.rack().unwatched(),
                facts.plan().errands().stream()
                        .filter(errand -> errand.dueWallMillis() < facts.wallMillis() + DAY_MILLIS)
                        .toList());
    }

    private static long lastChange(PassageView passage, BoardTimes times) {
        return passage.past().stream()
                .filter(past -> past.kind() == Past.Kind.PHASE)
                .mapToLong(past -> times.wallMillis(passage.board(), past.eventMillis()))
                .max()
                .orElse(0);
    }

    private static CellLine cell(PassageView passage, Optional<Errand> next, BoardTimes times, long since) {
        Optional<Phase> evening = Optional.empty();
        List<FindingKind> raised = new ArrayList<>();
        for (Past past : passage.past()) {
            boolean before = times.wallMillis(passage.board(), past.eventMillis()) < since;
            if (before && past.kind() == Past.Kind.PHASE) {
                evening = Optional.of(Phase.valueOf(past.what()));
            }
            if (!before && past.kind() == Past.Kind.RAISED) {
                FindingKind kind = FindingKind.valueOf(past.what());
                if (!raised.contains(kind)) {
                    raised.add(kind);
                }
            }
        }
        if (evening.isEmpty() && times.wallMillis(passage.board(), passage.openedMillis()) < since) {
            evening = Optional.of(Phase.CHECK_IN).filter(phase -> isWhole(passage));
        }
        return new CellLine(
                passage.id(),
                passage.tag(),
                passage.board(),
                passage.channel(),
                evening,
                passage.phase(),
                raised,
                next);
    }

    /** Whether all of its past is still known. */
    private static boolean isWhole(PassageView passage) {
        return passage.past().size() < PassageView.PAST_KEPT;
    }

    private static List<AlarmLine> alarms(MorningFacts facts) {
        Map<UUID, AlarmView> living = new HashMap<>();
        facts.living().forEach(alarm -> living.put(alarm.id(), alarm));
        List<AlarmLine> lines = new ArrayList<>();
        for (Raised raised : facts.raised()) {
            AlarmView alarm = living.remove(raised.alarm());
            String about = alarm == null ? tag(facts, raised) : about(alarm);
            AlarmState state = alarm == null ? AlarmState.NORMAL : alarm.state();
            lines.add(new AlarmLine(raised.wallMillis(), raised.kind(), about, raised.line(), state));
        }
        facts.living().stream()
                .filter(alarm -> living.containsKey(alarm.id()))
                .map(alarm -> new AlarmLine(
                        alarm.raisedWallMillis(),
                        alarm.kind(),
                        about(alarm),
                        alarm.cause().line(),
                        alarm.state()))
                .forEach(lines::add);
        lines.sort(Comparator.comparing(AlarmLine::wallMillis));
        return lines;
    }

    private static String about(AlarmView alarm) {
        List<String> tags = alarm.tags();
        return tags.isEmpty()
                ? alarm.subject()
                : tags.size() > MOST_NAMED ? tags.size() + " cells" : String.join(", ", tags);
    }

    private static String tag(MorningFacts facts, Raised raised) {
        String subject = raised.subject().text();
        return facts.rack().passages().stream()
                .filter(passage -> subject.endsWith(passage.id().toString()))
                .map(PassageView::tag)
                .findFirst()
                .orElse(subject);
    }
}
