package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.junit.jupiter.api.Test;

class BuzzerOutletTest {
    private final List<Integer> sounded = new ArrayList<>();
    private boolean connected = true;
    private final BuzzerOutlet buzzer = new BuzzerOutlet("buzzer", 60, seconds -> connected && sounded.add(seconds));

    private Outlet.Delivery deliver(String alarm, boolean rings, String state, String cover) {
        return buzzer.deliver(new OutletMessage(
                new UUID(7, 1), 1, rings, "{}", Map.of("alarmId", alarm, "state", state, "cover", cover)));
    }

    private void raise(String alarm) {
        deliver(alarm, true, "UNACKNOWLEDGED", "NONE");
    }

    private void acknowledge(String alarm) {
        deliver(alarm, false, "ACKNOWLEDGED", "NONE");
    }

    @Test
    void it_sounds_for_what_rings_and_stops_when_somebody_knows() {
        raise("hot");
        acknowledge("hot");
        assertThat(sounded).containsExactly(60, 0);
    }

    @Test
    void it_goes_on_while_another_alarm_calls() {
        raise("hot");
        raise("warming");
        acknowledge("hot");
        assertThat(sounded).containsExactly(60, 60);
        acknowledge("warming");
        assertThat(sounded).containsExactly(60, 60, 0);
    }

    @Test
    void what_went_by_itself_still_calls_and_what_is_put_away_does_not() {
        raise("hot");
        deliver("hot", false, "LATCHED_UNACKNOWLEDGED", "NONE");
        assertThat(sounded).containsExactly(60);
        deliver("hot", false, "LATCHED_UNACKNOWLEDGED", "SHELVED");
        assertThat(sounded).containsExactly(60, 0);
    }

    @Test
    void what_never_rang_here_stops_nothing() {
        acknowledge("hot");
        assertThat(sounded).isEmpty();
    }

    @Test
    void without_a_board_with_a_buzzer_messages_wait() {
        connected = false;
        assertThat(deliver("hot", true, "UNACKNOWLEDGED", "NONE"))
                .isEqualTo(new NotTaken("no board with a buzzer is connected"));
        connected = true;
        assertThat(deliver("hot", true, "UNACKNOWLEDGED", "NONE")).isEqualTo(new Taken());
        connected = false;
        assertThat(deliver("hot", false, "ACKNOWLEDGED", "NONE")).isInstanceOf(NotTaken.class);
        connected = true;
        assertThat(deliver("hot", false, "ACKNOWLEDGED", "NONE")).isEqualTo(new Taken());
        assertThat(sounded).containsExactly(60, 0);
    }
}
