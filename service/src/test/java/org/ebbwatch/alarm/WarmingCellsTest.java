package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.LongToDoubleFunction;
import org.ebbwatch.alarm.book.Report;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.PassageStanding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A slight warming stays one of many only as long as the cell stays below 45 degC and slower than 1 K/min. */
class WarmingCellsTest {
    private final WarmingCells cells = new WarmingCells();

    private static PassageStanding warm(double seen, double limit, String unit) {
        var finding = new Finding(FindingKind.WARMING, 80_000, Phase.REST, seen, limit, unit, "Warming.");
        return new PassageStanding(Standings.card(0), Phase.REST, "", List.of(finding), 90_000, 42);
    }

    private static boolean isMild(Report report) {
        return report.conditions().get(0).mild();
    }

    /** Seconds until the cell is told to be no longer one of many; -1 if it never is within ten minutes. */
    private long turnsAfter(LongToDoubleFunction celsiusAtMillis, double noise) {
        for (long millis = 0; millis <= 600_000; millis += 1_000) {
            long now = millis;
            double jitter = noise * Math.sin(millis * 0.7);
            List<Report> turned = cells.look(passage -> celsiusAtMillis.applyAsDouble(now) + jitter, board -> now);
            if (!turned.isEmpty()) {
                assertThat(turned).hasSize(1).noneMatch(WarmingCellsTest::isMild);
                return millis / 1_000;
            }
        }
        return -1;
    }

    @Test
    void over_its_reference_and_slow_evidence_are_mild() {
        assertThat(isMild(cells.report(warm(5.2, 5, "K")))).isTrue();
        assertThat(isMild(cells.report(warm(0.3 / 60, 0.1 / 60, "K/s")))).isTrue();
    }

    @Test
    void the_limit_for_any_cell_a_fast_rise_and_one_that_leads_to_hot_are_not() {
        assertThat(isMild(cells.report(warm(45.1, 45, "degC")))).isFalse();
        assertThat(isMild(cells.report(warm(1.0 / 60, 0.1 / 60, "K/s")))).isFalse();
        assertThat(isMild(cells.report(warm(0.9 / 60, 8.0 / 600, "K/s")))).isFalse();
    }

    @Test
    void a_cell_that_gets_to_45_degrees_leaves_the_many_at_once() {
        cells.report(warm(5.2, 5, "K"));

        assertThat(turnsAfter(millis -> millis < 100_000 ? 44.9 : 45, 0)).isEqualTo(100);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.2, 2, 6})
    void a_cell_that_warms_fast_leaves_them_within_a_minute_and_a_quarter(double kelvinPerMinute) {
        cells.report(warm(5.2, 5, "K"));

        assertThat(turnsAfter(millis -> 28 + Math.max(0, millis - 120_000) * kelvinPerMinute / 60_000, 0.05))
                .isBetween(121L, 195L);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 0.8})
    void a_cell_in_the_sun_stays_among_them(double kelvinPerMinute) {
        cells.report(warm(5.2, 5, "K"));

        assertThat(turnsAfter(millis -> 28 + millis * kelvinPerMinute / 60_000, 0.05))
                .isEqualTo(-1);
    }

    @Test
    void what_was_fast_before_the_judge_spoke_is_never_mild() {
        cells.report(Standings.draining(0));
        turnsAfter(millis -> 28 + millis * 2.0 / 60_000, 0);

        assertThat(isMild(cells.report(warm(5.2, 5, "K")))).isFalse();
    }
}
