package org.ebbwatch.sim.scenario;

/** A scenario file that says something this simulator cannot do; the message says where, what, and what is allowed. */
public final class ScenarioException extends Exception {
    private static final long serialVersionUID = 1;

    ScenarioException(String message) {
        super(message);
    }

    ScenarioException(String message, Throwable cause) {
        super(message, cause);
    }
}
