package org.ebbwatch.store;

import java.util.Optional;
import java.util.UUID;

/**
 * One cell's way from check-in to release or withdrawal.
 *
 * @param id time-ordered
 * @param tag the person's name for the cell
 * @param board serial number of the board it was checked in on
 * @param channel 0-based
 * @param openedEventMillis event time of that board
 * @param openedWall the same moment by the host's wall clock
 * @param procedure the whole procedure the passage is judged by, as text
 * @param cell description of the cell, as text
 * @param simulated whether the board said that it is simulated
 * @param speed event seconds per host second; 1 on a real board
 * @param closing how it ended; empty: it is open
 */
public record PassageRow(
        UUID id,
        String tag,
        String board,
        int channel,
        long openedEventMillis,
        WallLabel openedWall,
        String procedure,
        String cell,
        boolean simulated,
        int speed,
        Optional<Closing> closing) {

    /**
     * The end of a passage.
     *
     * @param eventMillis event time
     * @param reason why it ended
     */
    public record Closing(long eventMillis, String reason) {}
}
