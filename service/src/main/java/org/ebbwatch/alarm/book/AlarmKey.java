package org.ebbwatch.alarm.book;

/** What names an alarm among the living. */
record AlarmKey(AlarmKind kind, Subject subject) {}
