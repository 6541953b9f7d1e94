package org.ebbwatch.evidence.container;

import java.io.IOException;

/** Something in a bundle is not what was sealed. */
public final class DamageException extends IOException {
    private static final long serialVersionUID = 1;

    /** The name that damage outside of all parts goes by. */
    public static final String CONTAINER = "the container";

    private final String part;

    public DamageException(String part, String why) {
        super(why);
        this.part = part;
    }

    /** The damaged part, or {@link #CONTAINER}. */
    public String part() {
        return part;
    }
}
