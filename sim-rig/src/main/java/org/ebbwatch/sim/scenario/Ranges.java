package org.ebbwatch.sim.scenario;

/** Checks the range of a record's component; the message names it and what is allowed. */
final class Ranges {
    private Ranges() {}

    static void within(String name, double number, double lowest, double highest) {
        if (!(number >= lowest && number <= highest)) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is " + lowest + " to " + highest);
        }
    }

    static void within(String name, long number, long lowest, long highest) {
        if (number < lowest || number > highest) {
            throw new IllegalArgumentException(name + " is " + number + ", allowed is " + lowest + " to " + highest);
        }
    }
}
