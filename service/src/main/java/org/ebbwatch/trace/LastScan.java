package org.ebbwatch.trace;

/**
 * The newest scan kept of a board.
 *
 * @param bootNumber as the board counts its starts; 0: it cannot count
 * @param scan the board's number of the scan
 * @param eventMillis its event time
 */
public record LastScan(long bootNumber, long scan, long eventMillis) {}
