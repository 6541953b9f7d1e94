package org.ebbwatch.web.answer;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.web.HandClock;
import org.ebbwatch.web.InventedWorkshop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FreshnessTest {
    private final HandClock clock = new HandClock();
    private final Freshness freshness = new Freshness(clock);

    @Test
    void a_scan_grows_old_with_the_host() {
        BoardView board = board(LinkState.CONNECTED, 1000, 0);
        assertThat(freshness.ageSeconds(board)).isEqualTo(0.4);

        clock.pass(5.5);

        assertThat(freshness.ageSeconds(board)).isEqualTo(5.9);
        assertThat(freshness.isStale(board)).isFalse();

        clock.pass(0.2);

        assertThat(freshness.isStale(board)).isTrue();
    }

    @Test
    void the_next_scan_makes_a_board_fresh_again() {
        clock.pass(60);
        assertThat(freshness.isStale(board(LinkState.CONNECTED, 1000, 0))).isTrue();

        assertThat(freshness.isStale(board(LinkState.CONNECTED, 2000, 60_000))).isFalse();
    }

    @Test
    void a_wall_clock_that_is_set_back_does_not_make_a_silent_board_young() {
        BoardView board = board(LinkState.CONNECTED, 1000, 0);
        freshness.ageSeconds(board);

        clock.stepWall(-3600);
        clock.pass(30);

        assertThat(freshness.ageSeconds(board)).isEqualTo(30);
        assertThat(freshness.isStale(board)).isTrue();
    }

    @Test
    void a_board_that_was_silent_before_anybody_looked_is_as_old_as_its_scan() {
        clock.pass(600);

        assertThat(freshness.ageSeconds(board(LinkState.CONNECTED, 1000, 0))).isEqualTo(600.4);
    }

    @Test
    void before_the_first_scan_there_is_no_age_and_nothing_to_believe() {
        BoardView board = board(LinkState.CONNECTED, -1, 0);

        assertThat(freshness.ageSeconds(board)).isNaN();
        assertThat(freshness.isStale(board)).isTrue();
    }

    @ParameterizedTest
    @EnumSource(
            value = LinkState.class,
            names = {"WAITING", "REFUSED", "LOST"})
    void a_board_without_a_connection_is_stale_however_young_its_scan(LinkState link) {
        assertThat(freshness.isStale(board(link, 1000, 0))).isTrue();
    }

    private static BoardView board(LinkState link, long eventMillis, long laterMillis) {
        return new BoardView(
                "bench", link, "", "EB-0001", 0, eventMillis, InventedWorkshop.SCANNED_MILLIS + laterMillis, 0);
    }
}
