package org.ebbwatch.sim.rack;

/**
 * What is really the case on a channel, without the forecast that makes {@link CellTruth} dear.
 *
 * @param leadVolts what a perfect meter would read across the leads, 0 where nothing reaches them
 * @param cellCelsius of the cell, NaN without one
 * @param sensorCelsius of the channel's sensor, wherever it sits: what it would read without offset, noise and faults
 * @param amperes through the cell, discharge positive
 * @param loadConducts a load conducts, whatever its switch says
 * @param bonded the leads are bonded and the bond holds
 * @param attached load leads and sense leads are on the cell
 * @param tripped the cell's protection board has opened
 */
public record Glance(
        double leadVolts,
        double cellCelsius,
        double sensorCelsius,
        double amperes,
        boolean loadConducts,
        boolean bonded,
        boolean attached,
        boolean tripped) {}
