package org.ebbwatch.web.problem;

/** A request is refused. */
public final class ProblemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final ProblemKind kind;

    /**
     * A refusal.
     *
     * @param detail what was wrong this time, a sentence; what to do is added by the kind
     */
    public ProblemException(ProblemKind kind, String detail) {
        super(detail);
        this.kind = kind;
    }

    ProblemKind kind() {
        return kind;
    }
}
