package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.LongStream;
import org.ebbwatch.alarm.book.AlarmRates.Busiest;
import org.ebbwatch.alarm.book.AlarmRates.Guide;
import org.ebbwatch.alarm.book.AlarmRates.Often;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.junit.jupiter.api.Test;

class AlarmRatesTest {
    private static final long HOUR = 3_600_000;
    private static final long MINUTE = 60_000;

    private final List<Raised> raised = new ArrayList<>();

    private void raise(AlarmKind kind, long... moments) {
        LongStream.of(moments)
                .forEach(moment -> raised.add(new Raised(new UUID(0, 1), kind, new Subject.Rack(), "why", moment)));
    }

    private AlarmRates rates(Long... standingSince) {
        return AlarmRates.of(raised, List.of(standingSince), 0, 100 * HOUR);
    }

    @Test
    void nothing_is_nothing() {
        AlarmRates none = rates();

        assertThat(none.raised()).isZero();
        assertThat(none.perHour()).isZero();
        assertThat(none.busiest()).isEqualTo(new Busiest(0, 0));
        assertThat(none.guides()).allMatch(Guide::isKept);
    }

    @Test
    void the_busiest_ten_minutes_are_found_wherever_they_begin() {
        raise(AlarmKind.HOT, 0, 9 * MINUTE, 10 * MINUTE, 18 * MINUTE, 19 * MINUTE - 1, 19 * MINUTE);

        assertThat(rates().busiest()).isEqualTo(new Busiest(9 * MINUTE, 4));
    }

    @Test
    void a_flood_is_more_than_ten_in_a_ten_minute_slot() {
        for (long n = 0; n < 10; n++) {
            raise(AlarmKind.HELD, n * MINUTE);
        }
        assertThat(rates().floodShare()).isZero();
        raise(AlarmKind.HELD, 10 * MINUTE - 1);

        assertThat(rates().floodShare()).isCloseTo(1 / 600.0, within(1e-12));
    }

    @Test
    void kinds_are_told_most_frequent_first_and_what_lies_outside_is_left_out() {
        raise(AlarmKind.HOT, -1, 100 * HOUR, 5);
        raise(AlarmKind.STALLED, 1, 2, 3);
        raise(AlarmKind.WARMING, 4);

        assertThat(rates().kinds())
                .containsExactly(
                        new Often(AlarmKind.STALLED, 3), new Often(AlarmKind.HOT, 1), new Often(AlarmKind.WARMING, 1));
        assertThat(rates().urgencies()).isEqualTo(Map.of(Urgency.ADVISORY, 3, Urgency.DANGER, 1, Urgency.RINGING, 1));
        assertThat(rates().perHour()).isCloseTo(0.05, within(1e-12));
    }

    @Test
    void an_alarm_is_stale_after_a_day() {
        AlarmRates rates = rates(76 * HOUR, 76 * HOUR - 1, 99 * HOUR);

        assertThat(rates.standing()).isEqualTo(3);
        assertThat(rates.stale()).isEqualTo(1);
    }

    /** The figures of EEMUA 191, from memory: about 150 a day, 10 in ten minutes, less than 1 % in a flood, less than 5 stale. */
    @Test
    void they_are_held_against_the_usual_figures() {
        for (long n = 0; n < 700; n++) {
            raise(AlarmKind.HELD, n);
        }

        assertThat(rates(0L, 0L, 0L, 0L, 0L, 0L).guides())
                .extracting(Guide::most, Guide::found, Guide::isKept)
                .containsExactly(
                        tuple(150.0, 168.0, false),
                        tuple(10.0, 700.0, false),
                        tuple(1.0, 1 / 600.0 * 100, true),
                        tuple(5.0, 6.0, false));
    }
}
