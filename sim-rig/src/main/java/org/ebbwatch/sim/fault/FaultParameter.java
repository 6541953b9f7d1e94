package org.ebbwatch.sim.fault;

/**
 * One number that says how strong a fault is.
 *
 * @param name as a scenario writes it, with its unit
 * @param usual what holds where a scenario says nothing
 * @param lowest least allowed
 * @param highest most allowed
 * @param meaning in one line
 */
public record FaultParameter(String name, double usual, double lowest, double highest, String meaning) {}
