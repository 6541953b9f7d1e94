package org.ebbwatch.store;

/**
 * The host's wall clock at some moment: a label for people, never used to order or to judge.
 *
 * @param millis since 1970-01-01T00:00Z by the host's clock
 * @param quality how far the host's clock was to be trusted then
 */
public record WallLabel(long millis, String quality) {}
