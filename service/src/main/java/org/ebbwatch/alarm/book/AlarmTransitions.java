package org.ebbwatch.alarm.book;

import static org.ebbwatch.alarm.book.AlarmState.ACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_ACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.LATCHED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.NORMAL;
import static org.ebbwatch.alarm.book.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.ebbwatch.alarm.book.AlarmState.UNACKNOWLEDGED;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Every transition an alarm can make; what is not listed is refused. States and their transitions are those of IEC 62682 and
 * ISA-18.2 (from memory of their state diagram). State and cover are two tables, because beneath a cover the state goes on:
 * when the cover goes, the alarm is in its true state, not in the one it had when it was put away.
 *
 * <p>Two choices are this project's own. An acknowledged alarm whose condition outlasts its cover is unacknowledged again: who
 * knew of it yesterday may have gone home. And there is no suppression by design: what one cause does to many cells is one
 * alarm from the start.
 */
public final class AlarmTransitions {

    /** Which alarms a transition is for. */
    public enum Latching {
        ANY,
        PLAIN,
        LATCHED;

        boolean covers(boolean latched) {
            return this == ANY || (this == LATCHED) == latched;
        }
    }

    /** A transition of the state. */
    public record OfState(AlarmState from, AlarmStep step, Latching latching, AlarmState to) {}

    /** A transition of the cover. */
    public record OfCover(Cover from, AlarmStep step, Cover to) {}

    /** The transitions of the state. */
    public static final List<OfState> STATES = List.of(
            new OfState(NORMAL, AlarmStep.RAISED, Latching.ANY, UNACKNOWLEDGED),
            new OfState(UNACKNOWLEDGED, AlarmStep.TOLD, Latching.ANY, UNACKNOWLEDGED),
            new OfState(UNACKNOWLEDGED, AlarmStep.ACKNOWLEDGED, Latching.ANY, ACKNOWLEDGED),
            new OfState(UNACKNOWLEDGED, AlarmStep.RETURNED, Latching.PLAIN, RETURNED_UNACKNOWLEDGED),
            new OfState(UNACKNOWLEDGED, AlarmStep.RETURNED, Latching.LATCHED, LATCHED_UNACKNOWLEDGED),
            new OfState(ACKNOWLEDGED, AlarmStep.TOLD, Latching.ANY, ACKNOWLEDGED),
            new OfState(ACKNOWLEDGED, AlarmStep.RETURNED, Latching.PLAIN, NORMAL),
            new OfState(ACKNOWLEDGED, AlarmStep.RETURNED, Latching.LATCHED, LATCHED_ACKNOWLEDGED),
            new OfState(RETURNED_UNACKNOWLEDGED, AlarmStep.TOLD, Latching.PLAIN, RETURNED_UNACKNOWLEDGED),
            new OfState(RETURNED_UNACKNOWLEDGED, AlarmStep.ACKNOWLEDGED, Latching.PLAIN, NORMAL),
            new OfState(RETURNED_UNACKNOWLEDGED, AlarmStep.RAISED, Latching.PLAIN, UNACKNOWLEDGED),
            new OfState(LATCHED_UNACKNOWLEDGED, AlarmStep.TOLD, Latching.LATCHED, LATCHED_UNACKNOWLEDGED),
            new OfState(LATCHED_UNACKNOWLEDGED, AlarmStep.ACKNOWLEDGED, Latching.LATCHED, LATCHED_ACKNOWLEDGED),
            new OfState(LATCHED_UNACKNOWLEDGED, AlarmStep.RAISED, Latching.LATCHED, UNACKNOWLEDGED),
            new OfState(LATCHED_ACKNOWLEDGED, AlarmStep.TOLD, Latching.LATCHED, LATCHED_ACKNOWLEDGED),
            new OfState(LATCHED_ACKNOWLEDGED, AlarmStep.RESET, Latching.LATCHED, NORMAL),
            new OfState(LATCHED_ACKNOWLEDGED, AlarmStep.RAISED, Latching.LATCHED, UNACKNOWLEDGED));

    /** The transitions of the cover. */
    public static final List<OfCover> COVERS = List.of(
            new OfCover(Cover.NONE, AlarmStep.SHELVED, Cover.SHELVED),
            new OfCover(Cover.NONE, AlarmStep.TAKEN_OUT_OF_SERVICE, Cover.OUT_OF_SERVICE),
            new OfCover(Cover.SHELVED, AlarmStep.SHELVING_ENDED, Cover.NONE),
            new OfCover(Cover.SHELVED, AlarmStep.TAKEN_OUT_OF_SERVICE, Cover.OUT_OF_SERVICE),
            new OfCover(Cover.OUT_OF_SERVICE, AlarmStep.PUT_BACK_IN_SERVICE, Cover.NONE));

    private AlarmTransitions() {}

    /**
     * A state and what covers it.
     *
     * @param state by its condition
     * @param cover what a person put over it
     */
    public record Standing(AlarmState state, Cover cover) {
        /** No condition, nothing owed, nothing covered: there is no alarm. */
        public static final Standing NOTHING = new Standing(NORMAL, Cover.NONE);
    }

    /**
     * Where a step leads.
     *
     * @param latched whether the alarm is of a latched kind
     * @return empty where the step is refused
     */
    public static Optional<Standing> next(Standing from, AlarmStep step, boolean latched) {
        Optional<AlarmState> state = nextState(from.state(), step, latched);
        if (state.isPresent()) {
            boolean onlyInView = step != AlarmStep.RAISED && step != AlarmStep.RETURNED;
            return onlyInView && from.cover() != Cover.NONE
                    ? Optional.empty()
                    : Optional.of(new Standing(state.get(), from.cover()));
        }
        return COVERS.stream()
                .filter(transition -> transition.from() == from.cover() && transition.step() == step)
                .filter(transition -> transition.to() == Cover.NONE || !from.equals(Standing.NOTHING))
                .map(transition -> new Standing(beneath(from.state(), transition.to()), transition.to()))
                .findFirst();
    }

    /** What a person may ask for now. */
    public static Set<AlarmStep> allowed(Standing standing, AlarmKind kind) {
        Set<AlarmStep> allowed = EnumSet.noneOf(AlarmStep.class);
        for (AlarmStep step : AlarmStep.values()) {
            boolean loud =
                    !kind.mayBeCovered() && (step == AlarmStep.SHELVED || step == AlarmStep.TAKEN_OUT_OF_SERVICE);
            if (step.isAPersons()
                    && !loud
                    && next(standing, step, kind.isLatched()).isPresent()) {
                allowed.add(step);
            }
        }
        return allowed;
    }

    private static Optional<AlarmState> nextState(AlarmState from, AlarmStep step, boolean latched) {
        return STATES.stream()
                .filter(transition -> transition.from() == from
                        && transition.step() == step
                        && transition.latching().covers(latched))
                .map(OfState::to)
                .findFirst();
    }

    private static AlarmState beneath(AlarmState state, Cover next) {
        return next == Cover.NONE && state == ACKNOWLEDGED ? UNACKNOWLEDGED : state;
    }

    /** Both tables in Markdown, as they stand in the handbook. */
    public static String print() {
        var table =
                new StringBuilder("| state | what happens | which alarms | state after |\n| --- | --- | --- | --- |\n");
        for (OfState row : STATES) {
            table.append("| %s | %s | %s | %s |\n".formatted(row.from(), row.step(), row.latching(), row.to()));
        }
        table.append("\n| cover | what happens | cover after |\n| --- | --- | --- |\n");
        for (OfCover row : COVERS) {
            table.append("| %s | %s | %s |\n".formatted(row.from(), row.step(), row.to()));
        }
        return table.toString();
    }
}
