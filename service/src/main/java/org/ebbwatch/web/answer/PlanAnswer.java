package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.plan.Errand;
import org.ebbwatch.plan.Plan;
import org.ebbwatch.plan.Task;

/**
 * When somebody must be there.
 *
 * @param at when this was so
 * @param nightNow whether it is night
 * @param morningAt when the night that is now, or the coming one, is over
 * @param beforeMorning how many errands cannot wait until then
 * @param nextAt when somebody is asked to come next; null where nobody is
 * @param errands the next one of every open passage, those due first first
 */
@Serdeable
public record PlanAnswer(
        @Nullable String at,
        boolean nightNow,
        @Nullable String morningAt,
        int beforeMorning,
        @Nullable String nextAt,
        List<ErrandAnswer> errands) {

    /** The plan as it is told. */
    public static PlanAnswer of(Plan plan) {
        return new PlanAnswer(
                Figures.wallTime(plan.wallMillis()),
                plan.nightNow(),
                Figures.wallTime(plan.morningWallMillis()),
                plan.beforeMorning().size(),
                plan.errands().isEmpty()
                        ? null
                        : Figures.wallTime(plan.errands().get(0).dueWallMillis()),
                plan.errands().stream().map(ErrandAnswer::of).toList());
    }

    /**
     * The next thing a passage needs a person for.
     *
     * @param passageId whose
     * @param tag of its cell
     * @param board the board it is on
     * @param channel the channel it is on, from 0
     * @param task what is to be done
     * @param words the same in one sentence
     * @param waitsAlready whether it can be done now
     * @param earliestEventMillis event time before which it cannot be done
     * @param earliestAt the same by the wall clock, if all goes well
     * @param canWait whether nothing gets worse until the morning
     * @param dueAt when a person is asked to come: never at night for what can wait
     * @param why in one sentence
     */
    @Serdeable
    public record ErrandAnswer(
            UUID passageId,
            String tag,
            String board,
            int channel,
            Task task,
            String words,
            boolean waitsAlready,
            long earliestEventMillis,
            @Nullable String earliestAt,
            boolean canWait,
            @Nullable String dueAt,
            String why) {
        static ErrandAnswer of(Errand errand) {
            return new ErrandAnswer(
                    errand.passage(),
                    errand.tag(),
                    errand.board(),
                    errand.channel(),
                    errand.task(),
                    errand.task().words(),
                    errand.waitsAlready(),
                    errand.earliestEventMillis(),
                    Figures.wallTime(errand.earliestWallMillis()),
                    errand.canWait(),
                    Figures.wallTime(errand.dueWallMillis()),
                    errand.why());
        }
    }
}
