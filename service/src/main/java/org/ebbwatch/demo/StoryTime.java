package org.ebbwatch.demo;

/** Event time as the people of the story tell it. */
final class StoryTime {
    private StoryTime() {}

    /** Such as {@code day 2 03:05}. */
    static String of(long eventMillis) {
        long minutes = Math.max(0, eventMillis) / 60_000 + Workshop.OPENING_HOUR * 60L;
        return String.format("day %d %02d:%02d", minutes / 1440 + 1, minutes / 60 % 24, minutes % 60);
    }
}
