package org.ebbwatch.alarm;

/** Where people ask for things about alarms. Safe for use by several threads; requests are taken one after the other. */
public interface AlarmRequests {

    /**
     * Does what is asked, or nothing. What was done once is not done again for the same key, but answered again, across restarts
     * too; what was refused is judged anew.
     *
     * @param key made by whoever asks, as long as {@link org.ebbwatch.passage.RackDesk} takes them, another one for each request
     */
    AlarmReply ask(AlarmRequest request, String key);
}
