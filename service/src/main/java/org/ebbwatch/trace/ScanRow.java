package org.ebbwatch.trace;

/**
 * One scan of a board, looked at during a call only: whoever is handed one copies what it keeps, so the same object and arrays
 * may serve for every scan.
 */
public interface ScanRow {

    /** As the board counts its starts; 0: it cannot count. */
    long bootNumber();

    /** The board's number of this scan. */
    long scan();

    /** Event time, later than that of any scan of the board before. */
    long eventMillis();

    /** How many channels, 1 to 255; the arrays are at least as long. */
    int channels();

    /** Counts, or float bits if the board sends floats. */
    int[] volts();

    /** Counts, or float bits if the board sends floats. */
    int[] celsius();

    /** Counts, or float bits if the board sends floats; null: this scan has none. */
    int[] amperes();

    /** The board's state byte of every channel. */
    byte[] states();
}
