package org.ebbwatch.judge.procedure;

import static java.util.Objects.requireNonNull;

/**
 * Cells of one pack in series on neighbouring channels of one board, drained by one load across them all.
 *
 * @param name the person's own name for it, 1 to 40 characters
 * @param firstChannel the first of its channels, from 0
 * @param cells how many channels it takes, 2 to 64
 */
public record CellString(String name, int firstChannel, int cells) {
    public CellString {
        requireNonNull(name);
        if (name.isBlank() || name.length() > 40) {
            throw new IllegalArgumentException("a string's name has 1 to 40 characters, not \"" + name + '"');
        }
        if (firstChannel < 0 || cells < 2 || firstChannel + cells > 64) {
            throw new IllegalArgumentException(
                    "a string has 2 or more cells on channels 0 to 63, not " + cells + " from " + firstChannel + " on");
        }
    }

    /** The last of its channels. */
    public int lastChannel() {
        return firstChannel + cells - 1;
    }

    /** Whether a channel is one of its own. */
    public boolean reachesOver(int channel) {
        return channel >= firstChannel && channel <= lastChannel();
    }

    /** Whether both want a channel. */
    public boolean overlaps(CellString other) {
        return firstChannel <= other.lastChannel() && other.firstChannel <= lastChannel();
    }
}
