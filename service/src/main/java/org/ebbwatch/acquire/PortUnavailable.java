package org.ebbwatch.acquire;

import java.io.IOException;

/** A port cannot be opened now. The message is for a person: what is the matter, and what to do about it. */
public final class PortUnavailable extends IOException {

    private static final long serialVersionUID = 1L;

    /** What is the matter. */
    public enum Reason {
        /** There is no such port. */
        MISSING,
        /** Another program has it open. */
        IN_USE,
        /** This user may not open it. */
        FORBIDDEN,
        /** Nothing answers at the network address. */
        UNREACHABLE,
        /** Anything else. */
        OTHER
    }

    private final Reason reason;

    PortUnavailable(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
