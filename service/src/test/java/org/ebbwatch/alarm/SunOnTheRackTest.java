package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.BenchBoard.CELLS;

import com.github.f4b6a3.uuid.UuidCreator;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.passage.RackWatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the readings of sixteen cells in the sun, by way of the judge, to one alarm. */
class SunOnTheRackTest {
    private static final double SUN_KELVIN_PER_SECOND = 0.6 / 60;
    private static final int COMMIT_SCANS = 50;

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
        bench.desk.resume(watch.standings());
        board.checkInAll(watch);
        scans(0, 120, channel -> 0);
    }

    @AfterEach
    void closeRack() {
        bench.close();
    }

    /** So many seconds of readings; each cell warms from 22 degrees at its own pace from second {@code from} on. */
    private void scans(int from, int to, IntToDoubleFunction kelvinPerSecond) {
        for (int second = from; second < to; second++) {
            for (int channel = 0; channel < CELLS; channel++) {
                int begins = channel * 15;
                double kelvin = kelvinPerSecond.applyAsDouble(channel) * Math.max(0, second - from - begins);
                board.set(channel, 22 + kelvin);
            }
            board.scan(watch);
            bench.desk.look(watch::celsius, watch::eventMillis);
            bench.desk.tick(watch::eventMillis);
            if (second % COMMIT_SCANS == 0) {
                bench.commit();
            }
        }
        bench.commit();
        bench.deliver();
    }

    private List<String> alarms() {
        return bench.desk.view().alarms().stream()
                .map(alarm -> alarm.kind() + " " + alarm.tags().size())
                .toList();
    }

    @Test
    void sixteen_cells_in_the_sun_are_one_alarm_that_names_them_all() {
        scans(120, 1_100, channel -> SUN_KELVIN_PER_SECOND);

        assertThat(alarms()).containsExactly("WARMING 16");
        assertThat(bench.told()).containsExactly("RAISED WARMING");
        assertThat(bench.alarm(AlarmKind.WARMING).what()).startsWith("16 cells of board bench (");
        assertThat(bench.table.living().get(0).body()).as("on disk").contains("\"cell 15\"");
    }

    @Test
    void two_cells_that_warm_fast_in_the_same_sun_ring_by_themselves() {
        scans(120, 1_000, channel -> channel == 3 || channel == 11 ? 3.0 / 60 : SUN_KELVIN_PER_SECOND);

        assertThat(bench.desk.view().alarms())
                .filteredOn(alarm ->
                        alarm.kind() == AlarmKind.WARMING && alarm.tags().size() == 1)
                .extracting(AlarmView::tags)
                .containsExactlyInAnyOrder(List.of("cell 3"), List.of("cell 11"));
        assertThat(alarms()).contains("WARMING 14");
    }
}
