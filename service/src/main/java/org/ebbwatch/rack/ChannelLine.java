package org.ebbwatch.rack;

/**
 * What one channel showed when it was read once.
 *
 * @param about the board, and the channel where it is about one
 * @param tag of the cell that the rack file puts there; its role where there is none
 * @param volts with their uncertainty; "-" where none are read
 * @param celsius "-" where none are read
 * @param load "on", "off", or "-" where the board does not switch it
 * @param state what is the matter; "ok" where nothing is
 * @param toDo empty where nothing is to be done
 */
public record ChannelLine(
        String about, String tag, String volts, String celsius, String load, String state, String toDo) {
    /** What a channel is with which nothing is the matter. */
    public static final String OK = "ok";

    private static final String NOTHING = "-";

    /** A line about something that has no readings. */
    static ChannelLine trouble(String about, String state, String toDo) {
        return new ChannelLine(about, NOTHING, NOTHING, NOTHING, NOTHING, state, toDo);
    }

    /** Whether a person has to do something about it. */
    public boolean isTrouble() {
        return !toDo.isEmpty();
    }
}
