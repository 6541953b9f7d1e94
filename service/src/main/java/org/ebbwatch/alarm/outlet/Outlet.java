package org.ebbwatch.alarm.outlet;

/** A way an alarm leaves the service. */
public interface Outlet {

    /** Under this name its messages are kept; the same over restarts. */
    String name();

    /**
     * Tries once to deliver a message; may take its time, up to a minute.
     *
     * @throws InterruptedException if it is asked to stop
     */
    Delivery deliver(OutletMessage message) throws InterruptedException;

    /** How an attempt ended. */
    sealed interface Delivery {}

    /** The receiver has it. */
    record Taken() implements Delivery {}

    /**
     * The receiver is away or cannot take anything now.
     *
     * @param why for a person; holds no secret
     */
    record NotTaken(String why) implements Delivery {}

    /**
     * The receiver is there and does not want this message.
     *
     * @param why for a person; holds no secret
     */
    record Unwanted(String why) implements Delivery {}
}
