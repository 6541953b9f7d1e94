package org.ebbwatch.alarm;

/** Alarms for the outside to look at. Safe for use by several threads. */
public interface AlarmSource {

    /** The alarms at this moment. */
    AlarmsView alarms();
}
