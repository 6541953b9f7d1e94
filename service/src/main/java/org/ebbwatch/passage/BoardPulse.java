package org.ebbwatch.passage;

/**
 * How a board's readings come in.
 *
 * @param board its name in the rack file
 * @param connected whether it has proven who it is
 * @param eventMillis event time of its last scan; -1 before the first
 * @param intervalMillis of its scans; 0 where it is not known yet
 */
public record BoardPulse(String board, boolean connected, long eventMillis, long intervalMillis) {}
