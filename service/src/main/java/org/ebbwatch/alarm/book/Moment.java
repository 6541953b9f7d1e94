package org.ebbwatch.alarm.book;

/**
 * A moment of the host.
 *
 * @param wallMillis since 1970-01-01T00:00Z; may step, and is only a label and what night is told by
 * @param monotonicMillis of a clock that never steps, from an origin that means nothing
 */
public record Moment(long wallMillis, long monotonicMillis) {}
