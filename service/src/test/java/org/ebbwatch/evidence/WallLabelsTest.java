package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WallLabelsTest {

    @Test
    void a_moment_is_labelled_by_the_last_one_whose_wall_time_is_known() {
        var labels = new WallLabels(5_000, 1_750_000_000_000L, 0);
        assertThat(labels.text(5_000)).isEqualTo("2025-06-15T15:06:40.000Z");
        assertThat(labels.text(65_250)).isEqualTo("2025-06-15T15:07:40.250Z");
        labels.anchor(100_000, 1_750_003_600_000L);
        assertThat(labels.text(101_000)).isEqualTo("2025-06-15T16:06:41.000Z");
    }

    @Test
    void event_time_of_a_simulated_board_is_divided_by_its_speed() {
        var labels = new WallLabels(0, 1_750_000_000_000L, 3_600);
        assertThat(labels.text(7_200_000)).isEqualTo("2025-06-15T15:06:42.000Z");
    }

    @Test
    void a_host_clock_gone_mad_still_gives_a_label_of_the_same_form() {
        assertThat(WallLabels.rfc3339(Long.MIN_VALUE)).isEqualTo("1970-01-01T00:00:00.000Z");
        assertThat(WallLabels.rfc3339(Long.MAX_VALUE)).isEqualTo("9999-12-31T23:59:59.999Z");
    }
}
