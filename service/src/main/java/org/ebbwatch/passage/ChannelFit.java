package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.rig.message.Ability;

/** Says why a channel cannot serve a cell; empty where it can. */
final class ChannelFit {
    private static final double STRING_LOWEST_VOLTS = -0.2;
    private static final long STRING_INTERVAL_MILLIS = 1_000;

    private ChannelFit() {}

    /** Whether a cell may be checked in there. */
    static Optional<String> forCell(BoardWatch board, int channel, CellCard cell) {
        if (!board.isCell(channel)) {
            return Optional.of("Channel " + channel + " is no cell channel.");
        }
        if (cell.switched() && !board.can(channel, Ability.LOAD_SWITCH)) {
            return Optional.of("Channel " + channel + " has no load switch; say that hands switch the load.");
        }
        if (cell.inString() && board.lowestVolts() > STRING_LOWEST_VOLTS) {
            return Optional.of("The board cannot read -0.2 V: it would not see a cell of a string being reversed.");
        }
        if (cell.inString() && board.intervalMillis() > STRING_INTERVAL_MILLIS) {
            return Optional.of("The board measures every " + board.intervalMillis()
                    + " ms; a string can be reversed within seconds and needs at most 1000 ms.");
        }
        return Optional.empty();
    }

    /**
     * Whether a passage may move there.
     *
     * @param bonded whether its leads are bonded, so that a thermometer is enough
     */
    static Optional<String> forMove(BoardWatch board, int channel, PassageCard passage, boolean bonded) {
        if (passage.cell().inString()) {
            return Optional.of("A cell of a string stays on its channel.");
        }
        if (channel == passage.channel()) {
            return Optional.of("It is on channel " + channel + " already.");
        }
        if (bonded && board.isWatch(channel)) {
            return Optional.empty();
        }
        if (board.isWatch(channel)) {
            return Optional.of("Channel " + channel + " measures no volts; it serves cells whose leads are bonded.");
        }
        return forCell(board, channel, passage.cell());
    }

    /** The channels of a board for which {@code unfit} finds nothing. */
    static List<Integer> all(BoardWatch board, IntFunction<Optional<String>> unfit) {
        return IntStream.range(0, board.channels())
                .filter(channel -> unfit.apply(channel).isEmpty())
                .boxed()
                .toList();
    }
}
