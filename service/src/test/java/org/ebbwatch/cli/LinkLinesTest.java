package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.junit.jupiter.api.Test;

class LinkLinesTest {
    private final LinkLines lines = new LinkLines();

    @Test
    void a_link_is_told_with_its_reason() {
        assertThat(lines.news(rack(board("left", LinkState.WAITING, "The port does not exist."))))
                .containsExactly("Board left, waiting: The port does not exist.");
    }

    @Test
    void what_has_been_told_is_not_told_again() {
        RackView rack = rack(board("left", LinkState.WAITING, "No port."));
        lines.news(rack);

        assertThat(lines.news(rack)).isEmpty();
    }

    @Test
    void only_the_board_that_changed_is_told() {
        BoardView right = board("right", LinkState.CONNECTED, "Board R.");
        lines.news(rack(board("left", LinkState.WAITING, "No port."), right));

        assertThat(lines.news(rack(board("left", LinkState.CONNECTED, "Board L."), right)))
                .containsExactly("Board left, connected: Board L.");
    }

    @Test
    void a_link_that_comes_back_is_told_again() {
        lines.news(rack(board("left", LinkState.CONNECTED, "Board L.")));
        lines.news(rack(board("left", LinkState.LOST, "Unplugged.")));

        assertThat(lines.news(rack(board("left", LinkState.CONNECTED, "Board L."))))
                .containsExactly("Board left, connected: Board L.");
    }

    @Test
    void nothing_is_told_of_a_board_that_was_not_tried_yet() {
        assertThat(lines.news(rack(board("left", LinkState.WAITING, "")))).isEmpty();
    }

    private static RackView rack(BoardView... boards) {
        return new RackView(Stream.of(boards).toList(), List.of(), List.of());
    }

    private static BoardView board(String name, LinkState link, String detail) {
        return new BoardView(name, link, detail, "", 0, -1, 0, 0);
    }
}
