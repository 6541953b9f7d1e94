package org.ebbwatch.plan;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.PassageView;

/**
 * When somebody must be there: for every open passage its next errand, those that are due first first. Nothing that can wait is asked
 * for at night.
 *
 * <p>Event times are exact lower bounds: a cell that comes back, warms or falls silent takes longer. Wall times hold as far as the
 * boards keep going; a simulated board's speed is taken into account.
 *
 * @param wallMillis the moment it was made
 * @param nightNow whether that is at night
 * @param morningWallMillis when the night that is now, or the coming one, is over
 * @param errands by the time they are due
 */
public record Plan(long wallMillis, boolean nightNow, long morningWallMillis, List<Errand> errands) {
    private static final Comparator<Errand> DUE_FIRST =
            Comparator.comparingLong(Errand::dueWallMillis).thenComparing(Errand::canWait);

    public Plan {
        errands = List.copyOf(errands);
    }

    /** The plan at this moment. */
    public static Plan of(RackView rack, NightHours night, long wallMillis) {
        Map<String, BoardView> boards = new HashMap<>();
        rack.boards().forEach(board -> boards.put(board.name(), board));
        List<Errand> errands = new ArrayList<>();
        for (PassageView passage : rack.passages()) {
            BoardView board = boards.get(passage.board());
            long event = board == null ? -1 : board.eventMillis();
            int speed = board == null ? 1 : Math.max(1, board.simulatedSpeed());
            NextTask.of(passage, event)
                    .map(next -> errand(passage, next, event, wallMillis, speed, night))
                    .ifPresent(errands::add);
        }
        errands.sort(DUE_FIRST);
        return new Plan(wallMillis, night.isNight(wallMillis), morningAfter(wallMillis, night), errands);
    }

    private static Errand errand(
            PassageView passage, NextTask next, long eventMillis, long wallMillis, int speed, NightHours night) {
        long earliest = wallMillis + next.afterMillis() / speed;
        boolean put = next.canWait() && night.isNight(earliest);
        return new Errand(
                passage.id(),
                passage.tag(),
                passage.board(),
                passage.channel(),
                next.task(),
                next.afterMillis() == 0,
                Math.max(eventMillis, passage.openedMillis()) + next.afterMillis(),
                earliest,
                next.canWait(),
                put ? morningAfter(earliest, night) : earliest,
                next.why());
    }

    /** The first end of a night after that moment. */
    private static long morningAfter(long wallMillis, NightHours night) {
        ZonedDateTime moment = Instant.ofEpochMilli(wallMillis).atZone(night.zone());
        ZonedDateTime morning = moment.toLocalDate().atTime(night.to()).atZone(night.zone());
        ZonedDateTime next = morning.isAfter(moment)
                ? morning
                : moment.toLocalDate().plusDays(1).atTime(night.to()).atZone(night.zone());
        return next.toInstant().toEpochMilli();
    }

    /** What cannot wait and is due before the morning: whether somebody must come, or be woken, this night. */
    public List<Errand> beforeMorning() {
        return errands.stream()
                .filter(errand -> !errand.canWait() && errand.dueWallMillis() < morningWallMillis)
                .toList();
    }
}
