package org.ebbwatch.morning;

import java.util.HashMap;
import java.util.Map;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;

/** Event times of boards by the wall clock, reckoned back from their last scans; exact as far as neither clock stepped since. */
final class BoardTimes {
    private final Map<String, BoardView> boards = new HashMap<>();

    BoardTimes(RackView rack) {
        rack.boards().forEach(board -> boards.put(board.name(), board));
    }

    /** Wall time of an event time; of a board that was not heard yet: long ago. */
    long wallMillis(String board, long eventMillis) {
        BoardView view = boards.get(board);
        if (view == null || view.eventMillis() < 0) {
            return 0;
        }
        return view.wallMillis() - (view.eventMillis() - eventMillis) / Math.max(1, view.simulatedSpeed());
    }
}
