package org.ebbwatch.rig.message;

/** What a lead check found. */
public enum LeadOutcome {
    /** The pull did not move the voltage: something of low resistance holds the lead. */
    ATTACHED(0),
    /** The voltage followed the pull: nothing holds the lead. */
    OPEN(1),
    /** The check could not be carried out or could not be decided; proves nothing. */
    NOT_DONE(2);

    private final int code;

    LeadOutcome(int code) {
        this.code = code;
    }

    /** The byte on the wire, 0 to 2. */
    public int code() {
        return code;
    }
}
