package org.ebbwatch.judge;

/** What the terminals say of a load that a person puts on and takes off, where the person said otherwise or nothing. */
public enum LoadStep {
    /** It looks as if the load was put on. */
    SEEMS_ON("It looks as if the load was put on. If you did, say so."),
    /** It looks as if the load was taken off. */
    SEEMS_OFF("It looks as if the load was taken off. If you did, say so; if not, look at its leads.");

    private final String words;

    LoadStep(String words) {
        this.words = words;
    }

    /** The question for a person. */
    public String words() {
        return words;
    }
}
