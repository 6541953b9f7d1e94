package org.ebbwatch.demo;

import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView.PassageView;
import org.junit.jupiter.api.Test;

class StoryTest {
    @Test
    void look() {
        for (Bench bench : Workshop.story().boards()) {
            long t0 = System.nanoTime();
            var rack = new InProcessRack(bench, 7, 2000);
            rack.checkInAll(Procedure.careful());
            rack.run(() -> false, 8L * 86_400_000);
            System.out.println("took " + (System.nanoTime() - t0) / 1e9);
            for (PassageView passage : rack.passages()) {
                System.out.println(passage.channel() + " " + passage.tag() + " " + passage.phase() + " "
                        + passage.reason() + " Ah " + passage.ampereHours());
                passage.past()
                        .forEach(past -> System.out.printf(
                                "    %7.2f h %s %s %s%n",
                                past.eventMillis() / 3.6e6, past.kind(), past.what(), past.line()));
            }
        }
    }
}
