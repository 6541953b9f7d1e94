package org.ebbwatch.rack;

import java.util.List;

/** A rack file is wrong and nothing of it was taken. The message names every fault on a line of its own, as {@code file:line: what}. */
public final class RackFileFaulty extends Exception {

    private static final long serialVersionUID = 1L;

    private final List<String> faults;

    RackFileFaulty(List<String> faults) {
        super(String.join(System.lineSeparator(), faults));
        this.faults = List.copyOf(faults);
    }

    /** Each fault, in the order of their lines. */
    public List<String> faults() {
        return faults;
    }
}
