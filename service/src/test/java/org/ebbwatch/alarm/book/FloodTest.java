package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.book.AlarmKind.CUT_OFF;
import static org.ebbwatch.alarm.book.AlarmKind.FLOOD;
import static org.ebbwatch.alarm.book.AlarmKind.HOT;
import static org.ebbwatch.alarm.book.AlarmKind.STALLED;
import static org.ebbwatch.alarm.book.AlarmKind.TIE_LOOSE;
import static org.ebbwatch.alarm.book.AlarmKind.WARMING;
import static org.ebbwatch.alarm.book.BookBench.HOUR;

import java.util.List;
import org.junit.jupiter.api.Test;

/** More than ten in ten minutes are told together (EEMUA 191, from memory); nothing is hidden. */
class FloodTest {
    private static final long STRETCH = Flood.STRETCH_MILLIS;

    private final BookBench bench = new BookBench();

    private List<AlarmEvent> rung() {
        return bench.events.stream().filter(AlarmEvent::rings).toList();
    }

    private long rung(AlarmKind kind) {
        return rung().stream().filter(event -> event.alarm().kind() == kind).count();
    }

    private void nobodyIsForgotten() {
        assertThat(bench.book.alive()).allMatch(Alarm::told);
    }

    @Test
    void ten_ring_singly() {
        for (int n = 0; n < 10; n++) {
            bench.report(bench.standing(n, CUT_OFF));
        }
        bench.pass(1_000);

        assertThat(rung(CUT_OFF)).isEqualTo(10);
        assertThat(rung(FLOOD)).isZero();
    }

    @Test
    void the_eleventh_and_what_follows_are_told_together_and_all_are_in_the_book() {
        bench.report(bench.sixteen(CUT_OFF, TIE_LOOSE));
        bench.pass(1_000);

        assertThat(rung(CUT_OFF) + rung(TIE_LOOSE)).isEqualTo(10);
        assertThat(rung(FLOOD)).isEqualTo(1);
        assertThat(bench.of(FLOOD).cause().line()).startsWith("22 alarms are not told singly: ");
        assertThat(bench.book.alive()).hasSize(33);
        nobodyIsForgotten();
    }

    @Test
    void danger_rings_singly_all_the_same() {
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);

        assertThat(bench.report(bench.sixteen(HOT))).hasSize(16).allMatch(AlarmEvent::rings);
    }

    @Test
    void what_comes_during_the_flood_rings_together_after_ten_minutes() {
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);
        bench.acknowledge(bench.of(FLOOD));
        bench.report(bench.sixteen(CUT_OFF, TIE_LOOSE));
        assertThat(bench.pass(STRETCH - 1)).isEmpty();

        assertThat(bench.pass(1))
                .filteredOn(AlarmEvent::rings)
                .extracting(event -> event.alarm().kind())
                .containsExactly(FLOOD);
        assertThat(bench.of(FLOOD).cause().line()).startsWith("16 alarms are not told singly: 16 TIE_LOOSE.");
        nobodyIsForgotten();
    }

    @Test
    void the_few_that_come_last_are_told_singly_when_it_is_over() {
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);
        bench.report(bench.standing(0, CUT_OFF, WARMING));
        bench.report(bench.standing(16, CUT_OFF));

        assertThat(bench.pass(STRETCH))
                .filteredOn(AlarmEvent::rings)
                .hasSize(2)
                .allMatch(event -> event.step() == AlarmStep.TOLD);
        assertThat(bench.of(FLOOD).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
        nobodyIsForgotten();
    }

    @Test
    void advisory_ones_of_a_night_do_not_ring_because_a_flood_ends() {
        bench.pass(12 * HOUR);
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);
        bench.report(bench.standing(16, STALLED));

        bench.pass(STRETCH);
        assertThat(rung(STALLED)).isZero();
        bench.pass(8 * HOUR);
        assertThat(rung(STALLED)).isEqualTo(1);
    }

    @Test
    void a_restart_in_the_midst_of_it_tells_what_was_kept_back() {
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);
        Report[] standing = bench.sixteen(CUT_OFF, TIE_LOOSE);
        bench.report(standing);
        assertThat(bench.book.alive()).anyMatch(alarm -> !alarm.told());

        bench.restart(standing);
        bench.pass(1_000);

        assertThat(rung(TIE_LOOSE)).isEqualTo(10);
        nobodyIsForgotten();
    }

    @Test
    void it_cannot_be_put_out_of_the_way() {
        bench.report(bench.sixteen(CUT_OFF));
        bench.pass(1_000);

        assertThat(bench.of(FLOOD).allowed()).containsExactly(AlarmStep.ACKNOWLEDGED);
    }
}
