package org.ebbwatch.rig.message;

/** A message a board sends to the host. */
public sealed interface BoardMessage extends Message permits Identity, Readings, LeadChecked, Done, Refused {}
