package org.ebbwatch.trace;

import java.util.Optional;

/**
 * How well the trace is kept.
 *
 * @param tailTrouble why readings cannot be made durable, if so; they are kept in memory and tried again
 * @param databaseTrouble why segments cannot be stored, if so; the tail keeps their scans and they are tried again
 * @param tailBytes size of the tail
 * @param segmentsWaiting segments that are not in the database yet
 */
public record TraceHealth(
        Optional<String> tailTrouble, Optional<String> databaseTrouble, long tailBytes, int segmentsWaiting) {}
