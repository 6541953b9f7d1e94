package org.ebbwatch.rack;

import java.util.Optional;
import org.ebbwatch.judge.procedure.CellString;

/**
 * A cell on a channel.
 *
 * @param board name of the board
 * @param channel as the board counts, 0 to 63
 * @param tag the person's name for the cell, unique in the rack
 * @param chemistry of the cell
 * @param ratedAmpereHours the maker's rating when new, 0.01 to 1000
 * @param string the cells in series with which it is drained by one load; empty where it stands singly
 * @param loadOhms the resistor it is emptied through, 0.01 to 100000
 * @param loadTolerancePercent how far the resistor and its leads may be off, 0 to 20
 * @param loadWatts the resistor's rated power, 0.01 to 10000; empty where it is not given
 * @param switched true where the board's switch closes the load, false where a person does
 * @param procedure name of the procedure it is judged by
 */
public record CellEntry(
        String board,
        int channel,
        String tag,
        Chemistry chemistry,
        double ratedAmpereHours,
        Optional<CellString> string,
        double loadOhms,
        double loadTolerancePercent,
        Optional<Double> loadWatts,
        boolean switched,
        String procedure) {

    /** The same cell in a string, or in none. */
    CellEntry in(Optional<CellString> its) {
        return new CellEntry(
                board,
                channel,
                tag,
                chemistry,
                ratedAmpereHours,
                its,
                loadOhms,
                loadTolerancePercent,
                loadWatts,
                switched,
                procedure);
    }
}
