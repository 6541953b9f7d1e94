package org.ebbwatch.alarm.book;

/**
 * What an alarm says to a person.
 *
 * @param what what is the matter
 * @param consequence what may come of it
 * @param toDo what to do about it
 */
record AlarmWords(String what, String consequence, String toDo) {
    private static final int MOST_NAMED = 8;

    static AlarmWords of(Alarm alarm) {
        AlarmKind kind = alarm.kind();
        if (!isShared(alarm)) {
            return new AlarmWords(kind.what(), kind.consequence(), kind.toDo());
        }
        String which = cells(alarm);
        return kind == AlarmKind.WARMING
                ? new AlarmWords(
                        which + " warm together, each a little.",
                        "One cause outside them is likely: sun, heating, a draught on the sensors. If it is none of"
                                + " these, each may go on to get hot.",
                        "Look for sun, heating and a draught. Look at the cells from a distance. One that gets hot or warms"
                                + " fast rings by itself.")
                : new AlarmWords(which + ": " + kind.what(), kind.consequence(), kind.toDo());
    }

    private static boolean isShared(Alarm alarm) {
        boolean gathers = alarm.kind() == AlarmKind.WARMING || alarm.kind().scope() == AlarmKind.Scope.SHARED;
        return gathers
                && alarm.subject() instanceof Subject.Board
                && !alarm.tags().isEmpty();
    }

    private static String cells(Alarm alarm) {
        int count = alarm.tags().size();
        String named = String.join(", ", alarm.tags().subList(0, Math.min(count, MOST_NAMED)));
        String more = count > MOST_NAMED ? " and " + (count - MOST_NAMED) + " more" : "";
        return count + (count == 1 ? " cell" : " cells") + " of board "
                + alarm.cause().board() + " (" + named + more + ')';
    }
}
