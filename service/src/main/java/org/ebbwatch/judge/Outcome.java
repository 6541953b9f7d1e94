package org.ebbwatch.judge;

import java.util.List;

/**
 * What folding one entry brought about, in order.
 *
 * @param events mostly empty
 */
public record Outcome(List<Event> events) {

    /** Nothing happened. */
    public static final Outcome NOTHING = new Outcome(List.of());

    public Outcome {
        events = List.copyOf(events);
    }

    /** One thing that followed from an entry. */
    public sealed interface Event {}

    /** The passage went from one phase to another. */
    public record PhaseChanged(Phase from, Phase to, String reason) implements Event {}

    /** A finding was raised. */
    public record Raised(Finding finding) implements Event {}

    /** A finding no longer stands. */
    public record Cleared(FindingKind kind) implements Event {}

    /** Something the shell should do. */
    public record Wished(Wish wish) implements Event {}

    /** What a fold can ask of the shell. */
    public enum Wish {
        CLOSE_LOAD,
        OPEN_LOAD,
        CHECK_LEAD,
        /** The load of the whole string must open now. */
        OPEN_STRING,
        /** A person may put the load on. */
        ASK_PUT_ON,
        /** A person may take the load off. */
        ASK_TAKE_OFF,
        /** A person may bond the leads. */
        ASK_TIE_OFF,
        /** A person may part the bond for the last measurement. */
        ASK_PART,
        /** A person may release the cell. */
        ASK_RELEASE,
        /** A person should measure the terminals with a meter: nothing else can prove the attachment. */
        ASK_METER
    }
}
