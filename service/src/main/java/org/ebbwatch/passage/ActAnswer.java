package org.ebbwatch.passage;

import java.util.Set;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;

/** How a person's request ended. */
public sealed interface ActAnswer {

    /** Done; the passage is now in {@code phase}. */
    record Done(Phase phase) implements ActAnswer {}

    /** Refused, nothing changed; {@code allowed} is what the phase allows instead. */
    record NotNow(Phase phase, Act asked, Set<Act> allowed) implements ActAnswer {}
}
