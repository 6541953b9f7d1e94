package org.ebbwatch.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;

/** How the boards' links stand and which cells nobody watches, a line for each that has changed since it was last told. */
final class LinkLines {
    private final Map<String, String> told = new HashMap<>();

    /** One line for each board whose link, or the reason for its state, is not the one last told; none before there is a reason. */
    List<String> news(RackView rack) {
        List<String> lines = new ArrayList<>();
        for (BoardView board : rack.boards()) {
            String line = "Board " + board.name() + ", " + board.link().name().toLowerCase(Locale.ROOT) + ": "
                    + board.detail();
            if (!board.detail().isEmpty() && !line.equals(told.put(board.name(), line))) {
                lines.add(line);
            }
        }
        for (String cell : rack.unwatched()) {
            if (told.put(cell, cell) == null) {
                lines.add(cell);
            }
        }
        return lines;
    }
}
