package org.ebbwatch.trace.codec;

import java.nio.charset.StandardCharsets;

/**
 * Names one segment.
 *
 * @param board serial number of the board, 1 to 64 characters
 * @param channel 0-based
 * @param bootNumber as the board counts its starts; 0: it cannot count
 * @param firstScan the board's number of the first scan in the segment
 * @param firstEventMillis event time of that scan; it tells segments apart where a board cannot count its starts
 */
public record SegmentKey(String board, int channel, long bootNumber, long firstScan, long firstEventMillis) {

    public static final int LONGEST_BOARD_NAME = 64;

    public SegmentKey {
        requireBoardName(board);
        if (channel < 0 || channel > 255) {
            throw new IllegalArgumentException("channels are numbered 0 to 255, not " + channel);
        }
    }

    /**
     * Checks that a board can be kept under this name.
     *
     * @throws IllegalArgumentException if it cannot
     */
    public static void requireBoardName(String board) {
        if (board.isEmpty()
                || board.length() > LONGEST_BOARD_NAME
                || !StandardCharsets.UTF_8.newEncoder().canEncode(board)) {
            throw new IllegalArgumentException("a board's name has 1 to 64 well-formed characters: '" + board + "'");
        }
    }
}
