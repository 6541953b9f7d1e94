package org.ebbwatch.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.ebbwatch.replay.Recording.Row;
import org.junit.jupiter.api.Test;

class RecordedLoadTest {

    @Test
    void the_load_is_on_while_current_flows() {
        assertThat(switchings(40, second -> second >= 10 && second < 30 ? 1.0 : 0.002))
                .containsExactly("on at 10", "off at 30");
    }

    @Test
    void a_spike_below_two_per_cent_of_the_largest_current_is_no_load() {
        assertThat(switchings(40, second -> second == 35 ? 0.055 : second >= 10 && second < 30 ? 3.0 : 0.002))
                .containsExactly("on at 10", "off at 30");
    }

    @Test
    void a_current_that_fades_stays_on_until_it_is_lost_in_its_noise() {
        IntToDoubleFunction fading =
                second -> second < 10 || second >= 80 ? 0.01 * (second % 3 - 1) : 100 * Math.exp(-(second - 10) / 12.0);
        assertThat(switchings(100, fading)).containsExactly("on at 10", "off at 80");
    }

    @Test
    void a_current_not_read_or_absurd_leaves_the_load_as_it_is() {
        assertThat(switchings(40, second -> second == 5 ? 3.4e38 : second == 20 ? Double.NaN : second < 10 ? 0 : 1))
                .containsExactly("on at 10");
    }

    @Test
    void a_small_current_is_a_load_too() {
        assertThat(switchings(40, second -> second < 10 ? 0 : 0.03)).containsExactly("on at 10");
    }

    @Test
    void discharge_is_the_direction_more_charge_went_in() {
        IntToDoubleFunction negative = second -> second < 10 ? 0 : second < 15 ? 0.4 : -1;
        Recording recording = recording(40, negative);
        var load = new RecordedLoad(recording);

        assertThat(switchings(40, negative)).containsExactly("on at 15");
        assertThat(load.amperes(recording.rows().get(20))).isEqualTo(1);
        assertThat(load.ohms()).isCloseTo(3.7, within(1e-12));
    }

    @Test
    void without_a_current_there_is_no_load_to_suggest() {
        assertThat(switchings(40, second -> Double.NaN)).isEmpty();
        assertThat(Replay.suggestedOhms(recording(40, second -> Double.NaN))).isNaN();
    }

    private static List<String> switchings(int rows, IntToDoubleFunction amperes) {
        Recording recording = recording(rows, amperes);
        var load = new RecordedLoad(recording);
        List<String> switchings = new ArrayList<>();
        boolean on = false;
        for (Row row : recording.rows()) {
            if (load.isOn(row, on) != on) {
                on = !on;
                switchings.add((on ? "on" : "off") + " at " + Math.round(row.seconds()));
            }
        }
        return switchings;
    }

    private static Recording recording(int rows, IntToDoubleFunction amperes) {
        List<Row> all = new ArrayList<>();
        for (int second = 0; second < rows; second++) {
            all.add(new Row(second, 3.7, amperes.applyAsDouble(second), 22, 21));
        }
        return new Recording(all, 1e-4);
    }
}
