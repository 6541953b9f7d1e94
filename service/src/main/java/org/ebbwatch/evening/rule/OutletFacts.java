package org.ebbwatch.evening.rule;

import static java.util.Objects.requireNonNull;

/**
 * What is known of one way out.
 *
 * @param waiting messages that have not left
 * @param error why the last attempt failed; empty if it did not
 * @param delivered whether the test alarm left by it
 * @param heardBy who says that it arrived; empty while nobody does
 */
public record OutletFacts(String name, int waiting, String error, boolean delivered, String heardBy) {
    public OutletFacts {
        requireNonNull(name);
        requireNonNull(error);
        requireNonNull(heardBy);
    }
}
