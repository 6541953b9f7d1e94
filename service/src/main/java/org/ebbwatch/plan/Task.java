package org.ebbwatch.plan;

/** What a person can be wanted for. */
public enum Task {
    /** Put the load on, or let the board close it. */
    PUT_ON("Put the load on."),
    /** Take the load off. */
    TAKE_OFF("Take the load off, so that it can rest."),
    /** Bond the leads. */
    TIE_OFF("Bond the leads. If they spark, say so: it is not empty."),
    /** Hold a meter to the cell's own terminals. */
    MEASURE("Measure at the terminals with a meter and enter what it says."),
    /** Part the bond. */
    PART("Part the bond for the last measurement."),
    /** Hand the cell over as emptied. */
    RELEASE("Release the cell, or leave it here."),
    /** Say where the load is. */
    CONFIRM("Say whether the load was put on or taken off."),
    /** Decide what becomes of a cell that goes on in no other way. */
    DECIDE("Decide what becomes of it."),
    /** Something is wrong now. */
    LOOK("Look after it: something is wrong now.");

    private final String words;

    Task(String words) {
        this.words = words;
    }

    /** What to do, in one sentence. */
    public String words() {
        return words;
    }
}
