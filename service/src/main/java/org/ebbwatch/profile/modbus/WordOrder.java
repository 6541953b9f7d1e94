package org.ebbwatch.profile.modbus;

/** Which of the two registers of a 32-bit number comes first; makers differ. */
public enum WordOrder {
    HIGH_FIRST,
    LOW_FIRST
}
