package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
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
        return cell.inString() ? forString(board, channel, cell) : forLoad(board, channel, cell.switched());
    }

    /** Whether a channel can serve a load that stands on it singly. */
    static Optional<String> forLoad(BoardWatch board, int channel, boolean switched) {
        return switched && !board.can(channel, Ability.LOAD_SWITCH)
                ? Optional.of("Channel " + channel + " has no load switch; say that hands switch the load.")
                : Optional.empty();
    }

    private static Optional<String> forString(BoardWatch board, int channel, CellCard cell) {
        if (cell.string().isEmpty()) {
            return Optional.of("A string has a name: say which one, with its first channel and how many cells it has.");
        }
        CellString string = cell.string().get();
        if (!string.reachesOver(channel)) {
            return Optional.of("The cells of a string stand on neighbouring channels: channel " + channel
                    + " is none of " + string.firstChannel() + " to " + string.lastChannel() + '.');
        }
        for (int each = string.firstChannel(); each <= string.lastChannel(); each++) {
            if (!board.isCell(each)) {
                return Optional.of("The string reaches over channel " + each + ", which is no cell channel.");
            }
        }
        if (cell.switched() && board.switchOf(string).isEmpty()) {
            return Optional.of("No channel of the string has a load switch; say that hands switch the load.");
        }
        if (board.lowestVolts() > STRING_LOWEST_VOLTS) {
            return Optional.of("The board cannot read -0.2 V: it would not see a cell of a string being reversed.");
        }
        if (board.intervalMillis() > STRING_INTERVAL_MILLIS) {
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
    static Optional<String> forMove(BoardWatch board, int channel, OpenPassage passage, boolean bonded) {
        if (passage.judge().isInString()) {
            return Optional.of("A cell of a string stays on its channel.");
        }
        if (channel == passage.card().channel()) {
            return Optional.of("It is on channel " + channel + " already.");
        }
        if (bonded && board.isWatch(channel)) {
            return Optional.empty();
        }
        if (board.isWatch(channel)) {
            return Optional.of("Channel " + channel + " measures no volts; it serves cells whose leads are bonded.");
        }
        if (!board.isCell(channel)) {
            return Optional.of("Channel " + channel + " is no cell channel.");
        }
        boolean owes = passage.judge().owesLoad();
        return owes ? Optional.empty() : forLoad(board, channel, passage.judge().isSwitched());
    }

    /** The channels of a board for which {@code unfit} finds nothing. */
    static List<Integer> all(BoardWatch board, IntFunction<Optional<String>> unfit) {
        return IntStream.range(0, board.channels())
                .filter(channel -> unfit.apply(channel).isEmpty())
                .boxed()
                .toList();
    }
}
