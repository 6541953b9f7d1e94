package org.ebbwatch.store;

import java.util.UUID;

/** A moment at which an alarm was raised, and why. */
public record RaisedRow(UUID alarm, String kind, String subject, String causeLine, long wallMillis) {}
