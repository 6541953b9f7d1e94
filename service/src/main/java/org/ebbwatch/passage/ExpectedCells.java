package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Cells that wait to be checked in by themselves as soon as their board is heard, and those of them that could not be. */
final class ExpectedCells {
    private static final Logger LOG = LoggerFactory.getLogger(ExpectedCells.class);

    private final List<Expected> waiting = new ArrayList<>();
    private final List<String> unwatched = new ArrayList<>();

    record Expected(String board, int channel, CellCard cell, Procedure procedure) {}

    void add(Expected cell) {
        waiting.add(cell);
    }

    boolean any(String board) {
        return waiting.stream().anyMatch(cell -> cell.board().equals(board));
    }

    /** Those of a board that is heard now; they wait no longer. */
    List<Expected> take(String board) {
        List<Expected> here =
                waiting.stream().filter(cell -> cell.board().equals(board)).toList();
        waiting.removeAll(here);
        return here;
    }

    void unwatched(Expected cell, String why) {
        String line = "Cell " + cell.cell().tag() + " on channel " + cell.channel() + " of board " + cell.board()
                + " is NOT watched. " + why;
        LOG.error(line);
        unwatched.add(line);
    }

    /** A line for each cell that nobody watches. */
    List<String> unwatched() {
        return List.copyOf(unwatched);
    }
}
