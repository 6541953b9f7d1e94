package org.ebbwatch.alarm.book;

import java.util.Map;

/**
 * What conditions must know of the alarms there are.
 *
 * @param alive the living now; changes
 * @param left those an earlier run left; empty but while they are taken up
 */
record Living(Map<AlarmKey, Alarm> alive, Map<AlarmKey, Alarm> left) {

    /** Whether an alarm with this key is active. */
    boolean isActive(AlarmKey key) {
        return isActive(alive.get(key));
    }

    /** Whether it is active and in plain view. */
    boolean isInView(AlarmKey key) {
        return isActive(key) && alive.get(key).cover() == Cover.NONE;
    }

    /** Whether an earlier run left it active and it was about that cell. */
    boolean wasAbout(AlarmKey key, String tag) {
        return isActive(left.get(key)) && left.get(key).tags().contains(tag);
    }

    static boolean isActive(Alarm alarm) {
        return alarm != null && alarm.state().isActive();
    }
}
