package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.PassageView;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo's whole story, in one thread and with several seeds. */
class StoryTest {
    private static final long LONGEST_MILLIS = 8L * 86_400_000;
    private static final double RESTED_LIMIT_VOLTS = Procedure.careful().rest().limitVolts();

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void every_scripted_fault_is_found_on_its_channel_and_nothing_on_the_others(long seed) {
        Workshop workshop = Workshop.story();
        List<RackView> ends = new ArrayList<>();
        for (Bench bench : workshop.boards()) {
            var rack = new InProcessRack(bench, seed + ends.size(), 2_000);
            rack.checkInAll(Procedure.careful());
            rack.run(() -> rack.passages().stream().allMatch(StoryTest::isSettled), LONGEST_MILLIS);
            ends.add(rack.watch().view());
            for (PassageView passage : rack.passages()) {
                if (passage.phase() == Phase.RELEASED) {
                    assertThat(rack.sim().truth(passage.channel()).restedVoltsAfter24h())
                            .as("rested voltage of the released cell %s", passage.tag())
                            .isLessThan(RESTED_LIMIT_VOLTS);
                }
            }
        }
        var table = new DemoTable(workshop, together(ends));
        assertThat(table.isAsScripted()).as(table.text()).isTrue();
    }

    private static boolean isSettled(PassageView passage) {
        return passage.phase().isOver() || passage.phase() == Phase.HELD;
    }

    private static RackView together(List<RackView> views) {
        return new RackView(
                views.stream().flatMap(view -> view.boards().stream()).toList(),
                views.stream().flatMap(view -> view.channels().stream()).toList(),
                views.stream().flatMap(view -> view.passages().stream()).toList());
    }
}
