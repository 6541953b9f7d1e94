package org.ebbwatch.life;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.ebbwatch.passage.BoardPulse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgressTest {
    private final Progress progress = new Progress();

    private static BoardPulse pulse(String board, boolean connected, long eventMillis, long intervalMillis) {
        return new BoardPulse(board, connected, eventMillis, intervalMillis);
    }

    @Test
    void nothing_is_well_before_anything_was_looked_at_or_without_a_board() {
        assertThat(progress.isWell()).isFalse();
        progress.look(List.of(), 0);
        assertThat(progress.isWell()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0, 5000", "1000, 5000", "2000, 6000", "60000, 180000"})
    void a_board_is_heard_within_five_seconds_or_three_of_its_intervals(long intervalMillis, long patienceMillis) {
        progress.look(List.of(pulse("left", true, 1_000, intervalMillis)), 0);
        progress.look(List.of(pulse("left", true, 1_000, intervalMillis)), patienceMillis);
        assertThat(progress.isWell()).isTrue();

        progress.look(List.of(pulse("left", true, 1_000, intervalMillis)), patienceMillis + 1);
        assertThat(progress.isWell()).isFalse();
        assertThat(progress.isWorking()).isFalse();
        assertThat(progress.trouble()).isEqualTo("board left is not heard");

        progress.look(List.of(pulse("left", true, 2_000, intervalMillis)), patienceMillis + 2);
        assertThat(progress.isWell()).isTrue();
    }

    @Test
    void one_board_that_is_silent_is_enough_for_all_not_to_be_well_but_work_goes_on() {
        progress.look(List.of(pulse("left", true, 1_000, 1_000), pulse("shed", true, 1_000, 1_000)), 0);
        progress.look(List.of(pulse("left", true, 9_000, 1_000), pulse("shed", true, 1_000, 1_000)), 9_000);

        assertThat(progress.isWell()).isFalse();
        assertThat(progress.isWorking()).isTrue();
    }

    @Test
    void a_board_that_was_never_heard_is_not_well_and_where_nothing_is_plugged_in_nothing_hangs() {
        progress.look(List.of(pulse("left", false, -1, 0)), 0);

        assertThat(progress.isWell()).isFalse();
        assertThat(progress.trouble()).isEqualTo("board left was never heard");
        assertThat(progress.isWorking()).isTrue();
    }
}
