package org.ebbwatch.sim.rack;

import java.util.List;
import org.ebbwatch.sim.fault.FaultKind;

/**
 * What is really the case on a channel, whatever its readings say. On a channel without a cell the tag is empty and the numbers
 * of the cell are NaN.
 *
 * @param tag of the cell
 * @param openCircuitVolts at equilibrium with the charge it holds now, at its own terminals; a protection board hides it
 * @param restedVoltsAfter24h what its own terminals would show after 24 h without load from now
 * @param stateOfCharge charge held over capacity
 * @param celsius of the cell
 * @param leadVolts what a perfect meter would read across the leads, 0 where nothing reaches them
 * @param amperes through the cell, discharge positive
 * @param loadApplied a load conducts, whatever its switch says
 * @param bonded the leads are bonded and the bond holds
 * @param insulated the leads are insulated
 * @param attached the channel's leads are on the cell
 * @param reversed the cell is the wrong way round
 * @param contained the cell is in the watch container
 * @param blinking the board blinks this channel
 * @param activeFaults of the channel and of the board
 */
public record CellTruth(
        String tag,
        double openCircuitVolts,
        double restedVoltsAfter24h,
        double stateOfCharge,
        double celsius,
        double leadVolts,
        double amperes,
        boolean loadApplied,
        boolean bonded,
        boolean insulated,
        boolean attached,
        boolean reversed,
        boolean contained,
        boolean blinking,
        List<FaultKind> activeFaults) {
    public CellTruth {
        activeFaults = List.copyOf(activeFaults);
    }

    /** Whether a cell is on the channel at all. */
    public boolean isOccupied() {
        return !tag.isEmpty();
    }
}
