package org.ebbwatch.passage;

import java.util.UUID;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * What is fixed when a passage is opened.
 *
 * @param id time-ordered (RFC 9562, version 7)
 * @param board the board it begins on
 * @param channel the channel it begins on, from 0
 * @param cell the cell and its load
 * @param procedure what it is judged by
 * @param openedMillis event time of its opening: it owns every reading of its channel from here on
 * @param wallMillis when that was, a label
 * @param simulatedSpeed 0 for a real board, else how fast the simulator ran
 */
public record PassageCard(
        UUID id,
        String board,
        int channel,
        CellCard cell,
        Procedure procedure,
        long openedMillis,
        long wallMillis,
        int simulatedSpeed) {

    /** The same passage on another channel of its board. */
    PassageCard at(int otherChannel) {
        return new PassageCard(id, board, otherChannel, cell, procedure, openedMillis, wallMillis, simulatedSpeed);
    }
}
