package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.acquire.RetryPause.Attempt.NOT_OPENED;
import static org.ebbwatch.acquire.RetryPause.Attempt.PROVEN;
import static org.ebbwatch.acquire.RetryPause.Attempt.UNPROVEN;

import java.util.List;
import java.util.stream.LongStream;
import org.ebbwatch.acquire.RetryPause.Attempt;
import org.junit.jupiter.api.Test;

class RetryPauseTest {
    private final RetryPause pause = new RetryPause();

    private List<Long> pauses(Attempt attempt, int times) {
        return LongStream.range(0, times)
                .map(time -> pause.after(attempt))
                .boxed()
                .toList();
    }

    @Test
    void a_port_that_is_away_is_tried_every_half_second_however_long_it_is() {
        assertThat(pauses(NOT_OPENED, 100)).containsOnly(500L);
    }

    @Test
    void a_port_that_opens_without_a_board_is_opened_ever_more_seldom() {
        assertThat(pauses(UNPROVEN, 7)).containsExactly(500L, 1_000L, 2_000L, 4_000L, 8_000L, 10_000L, 10_000L);
    }

    @Test
    void after_a_board_was_heard_it_begins_anew() {
        pauses(UNPROVEN, 7);
        assertThat(pauses(PROVEN, 3)).containsOnly(500L);
        assertThat(pauses(UNPROVEN, 2)).containsExactly(500L, 1_000L);
    }

    @Test
    void a_board_unplugged_while_it_was_asked_who_it_is_comes_back_as_soon() {
        pauses(UNPROVEN, 7);
        assertThat(pauses(NOT_OPENED, 5)).containsOnly(500L);
    }
}
