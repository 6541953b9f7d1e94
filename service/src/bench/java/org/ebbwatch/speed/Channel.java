package org.ebbwatch.speed;

import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;

/** One channel whose cell has just come to its stage. */
final class Channel {
    private final Stage stage;
    private final Judge judge;
    private final Course course;

    Channel(Stage stage) {
        this.stage = stage;
        this.judge = stage.reached();
        this.course = stage.course(judge);
    }

    Outcome readOnce() {
        return judge.fold(course.next());
    }

    /** What was measured is worth nothing unless the cell is still in its stage. */
    void end() {
        if (judge.phase() != stage.phase() || judge.isLocked()) {
            throw new IllegalStateException("not " + stage + " to the end but " + judge.phase() + ": " + judge.reason()
                    + " " + judge.findings());
        }
    }
}
