package org.ebbwatch.web.problem;

import java.util.List;
import java.util.function.UnaryOperator;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.web.problem.Problem.OfAlarm;

/** A request is refused. */
public final class ProblemException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final ProblemKind kind;
    private final transient UnaryOperator<Problem> more;

    /**
     * A refusal.
     *
     * @param detail what was wrong this time, a sentence; what to do is added by the kind
     */
    public ProblemException(ProblemKind kind, String detail) {
        this(kind, detail, problem -> problem);
    }

    private ProblemException(ProblemKind kind, String detail, UnaryOperator<Problem> more) {
        super(detail);
        this.kind = kind;
        this.more = more;
    }

    /** A passage does not allow what was asked. */
    public static ProblemException notNow(String detail, Phase phase, String request, List<Act> allowed) {
        return new ProblemException(ProblemKind.NOT_NOW, detail, problem -> problem.with(phase, request, allowed));
    }

    /** A passage has changed since it was looked at. */
    public static ProblemException stale(String detail, long sequence) {
        return new ProblemException(ProblemKind.CHANGED_SINCE, detail, problem -> problem.with(sequence));
    }

    /** An alarm does not allow what was asked. */
    public static ProblemException notNow(String detail, OfAlarm alarm, String request) {
        return new ProblemException(ProblemKind.NOT_NOW, detail, problem -> problem.with(alarm, request, null));
    }

    /** An alarm has made steps since it was looked at. */
    public static ProblemException stale(String detail, OfAlarm alarm, String request, long sequence) {
        return new ProblemException(
                ProblemKind.CHANGED_SINCE, detail, problem -> problem.with(alarm, request, sequence));
    }

    /** With what this kind of problem has to say beyond its words. */
    Problem complete(Problem problem) {
        return more.apply(problem);
    }

    ProblemKind kind() {
        return kind;
    }
}
