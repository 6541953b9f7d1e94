package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.alarm.BenchBoard.NAME;

import com.github.f4b6a3.uuid.UuidCreator;
import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.PassageStanding;
import org.ebbwatch.passage.RackObserver;
import org.ebbwatch.passage.RackWatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a board's readings to an alarm in the book. */
class RackAlarmsTest {
    @TempDir
    Path directory;

    private final HandClock clock = new HandClock();
    private final BenchBoard board = new BenchBoard(clock);
    private DeskBench bench;
    private RackWatch watch;

    @BeforeEach
    void openRack() {
        bench = new DeskBench(directory, clock);
        watch = new RackWatch(
                bench.rack, bench.rack, board, UuidCreator::getTimeOrderedEpoch, bench.desk, new Happenings(0));
        bench.rack.openCards().forEach(card -> watch.takeUp(bench.rack.takeUp(card)));
        bench.desk.resume(watch.standings());
    }

    @AfterEach
    void closeRack() {
        bench.close();
    }

    private void scans(int count) {
        for (int n = 0; n < count; n++) {
            board.scan(watch);
        }
        bench.desk.tick(watch::eventMillis);
        bench.commit();
    }

    @Test
    void a_rack_that_is_well_has_no_alarm() {
        board.checkInAll(watch);
        scans(100);

        assertThat(bench.desk.view().alarms()).isEmpty();
    }

    @Test
    void sixteen_channels_of_a_silent_board_are_one_alarm_until_it_has_been_heard_for_a_minute() {
        board.checkInAll(watch);
        watch.silent(NAME, board.eventMillis());

        assertThat(bench.desk.view().alarms()).hasSize(1);
        AlarmView silent = bench.alarm(AlarmKind.SILENT);
        assertThat(silent.subject()).isEqualTo("board bench");
        assertThat(silent.tags()).hasSize(16);
        bench.deliver();
        assertThat(bench.told()).containsExactly("RAISED SILENT");

        scans(60);
        assertThat(bench.alarm(AlarmKind.SILENT).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
        scans(1);
        assertThat(bench.alarm(AlarmKind.SILENT).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
    }

    @Test
    void a_warm_room_is_one_alarm_and_a_hot_cell_in_it_another() {
        board.checkInAll(watch);
        board.setAmbient(36);
        board.set(5, 70);
        scans(3);

        assertThat(bench.desk.view().alarms())
                .extracting(alarm -> alarm.kind() + " " + alarm.tags().size())
                .contains("HOT 1", "AMBIENT_HIGH 16");
        assertThat(bench.alarm(AlarmKind.HOT).cause().channel()).isEqualTo(5);
        assertThat(bench.alarm(AlarmKind.HOT).cause().eventMillis()).isEqualTo(3_000);
        assertThat(bench.desk.view().alarms()).extracting(AlarmView::kind).doesNotContain(AlarmKind.HELD);
    }

    @Test
    void an_alarm_and_its_passage_are_found_again_after_a_restart() {
        board.checkInAll(watch);
        board.set(5, 70);
        scans(3);
        List<AlarmView> before = bench.desk.view().alarms();
        assertThat(before).extracting(AlarmView::kind).contains(AlarmKind.HOT);

        bench.close();
        openRack();

        assertThat(bench.desk.view().alarms()).isEqualTo(before);
        assertThat(bench.table.steps(bench.alarm(AlarmKind.HOT).id())).hasSize(1);
        bench.deliver();
        assertThat(bench.told()).as("sent once, from the outbox on disk").hasSameSizeAs(before);
    }

    @Test
    void a_cell_put_on_without_proof_is_held_and_a_person_withdraws_it() {
        watch.identified(NAME, BenchBoard.identity());
        board.scan(watch);
        var card = watch.checkIn(NAME, 0, BenchBoard.cell(0), Procedure.careful(), 0);
        watch.act(card.id(), Act.PUT_ON);
        bench.pass(2_000);
        assertThat(bench.alarm(AlarmKind.HELD).cause().line()).contains("not proven");

        watch.act(card.id(), Act.WITHDRAW);
        assertThat(bench.alarm(AlarmKind.HELD).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
    }

    @Test
    void a_board_that_was_never_heard_is_an_alarm_where_cells_wait_for_it() {
        watch.silent(NAME, 0);
        assertThat(bench.desk.view().alarms()).isEmpty();

        watch.expectCell(NAME, 0, BenchBoard.cell(0), Procedure.careful());
        watch.silent(NAME, 0);
        assertThat(bench.alarm(AlarmKind.SILENT).subject()).isEqualTo("board bench");

        watch.identified(NAME, BenchBoard.identity());
        board.scan(watch);
        assertThat(bench.alarm(AlarmKind.SILENT).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
    }

    @Test
    void a_fault_in_whoever_looks_costs_no_fact() {
        var broken = new RackWatch(
                bench.rack,
                bench.rack,
                board,
                UuidCreator::getTimeOrderedEpoch,
                new FaultyObserver(),
                new Happenings(0));
        broken.identified(NAME, BenchBoard.identity());
        board.scan(broken);

        assertThatThrownBy(() -> broken.checkIn(NAME, 0, BenchBoard.cell(0), Procedure.careful(), 0))
                .hasMessage("a fault");
        assertThat(bench.rack.openCards()).hasSize(1);
    }

    private static final class FaultyObserver implements RackObserver {
        @Override
        public void changed(List<PassageStanding> passages) {
            throw new IllegalStateException("a fault");
        }

        @Override
        public void unheard(String board, long eventMillis) {}

        @Override
        public void heard(String board) {}

        @Override
        public void committed() {}
    }
}
