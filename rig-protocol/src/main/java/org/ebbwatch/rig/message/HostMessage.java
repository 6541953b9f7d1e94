package org.ebbwatch.rig.message;

/** A message the host sends to a board. Every one but {@link HostAlive} is answered by the board. */
public sealed interface HostMessage extends Message
        permits Who, HostAlive, SetLoad, CheckLead, Blink, Buzzer, SetInterval, OpenAllLoads {}
