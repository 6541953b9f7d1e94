package org.ebbwatch.passage;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/** What a person may ask of a rack. Each refuses numbers out of its range when it is made. */
public sealed interface DeskRequest {

    /** What it is called in answers. */
    String name();

    /** Everything that is asked for, but not what was seen before: the same text, the same request. */
    String text();

    /**
     * A cell is on a channel; watch it.
     *
     * @param channel from 0
     */
    record CheckIn(String board, int channel, CellCard cell, Procedure procedure) implements DeskRequest {
        public CheckIn {
            requireNonNull(board);
            requireNonNull(cell);
            requireNonNull(procedure);
        }

        @Override
        public String name() {
            return "check in";
        }

        @Override
        public String text() {
            return joined(
                    name(),
                    board,
                    channel,
                    cell.tag(),
                    cell.chemistry(),
                    cell.ratedAmpereHours(),
                    cell.loadOhms(),
                    cell.switched(),
                    cell.inString(),
                    procedure.name()
                            + cell.string().map(string -> "\u001f" + string).orElse("")
                            + cell.loadTolerance()
                                    .map(tolerance -> "\u001f" + tolerance)
                                    .orElse(""));
        }
    }

    /** A request about one passage. */
    sealed interface OnPassage extends DeskRequest {
        UUID passage();

        /** The sequence of the passage as the person saw it; see {@link RackView.PassageView#sequence()}. */
        long seen();
    }

    /** A person did something, or wants the board to do it. */
    record Do(UUID passage, long seen, Act act) implements OnPassage {
        public Do {
            requireNonNull(passage);
            requireNonNull(act);
        }

        @Override
        public String name() {
            return act.name();
        }

        @Override
        public String text() {
            return joined("act", passage, act);
        }
    }

    /**
     * A person measured the terminals with a meter.
     *
     * @param volts -5.5 to 5.5: a cell in series with nothing has no more, and reversed no less
     */
    record Meter(UUID passage, long seen, double volts) implements OnPassage {
        /** Most volts either way. */
        public static final double MOST_VOLTS = 5.5;

        public Meter {
            requireNonNull(passage);
            if (!(Math.abs(volts) <= MOST_VOLTS)) {
                throw new IllegalArgumentException("volts are " + -MOST_VOLTS + " to " + MOST_VOLTS + ", not " + volts);
            }
        }

        @Override
        public String name() {
            return "meter reading";
        }

        @Override
        public String text() {
            return joined(name(), passage, volts);
        }
    }

    /**
     * A person is about to work on the channel.
     *
     * @param minutes for so long, 1 to 60
     */
    record Announce(UUID passage, long seen, Work work, int minutes) implements OnPassage {
        /** Most minutes. */
        public static final int MOST_MINUTES = 60;

        public Announce {
            requireNonNull(passage);
            requireNonNull(work);
            requireWithin("minutes", minutes, 1, MOST_MINUTES);
        }

        @Override
        public String name() {
            return "announce work";
        }

        @Override
        public String text() {
            return joined(name(), passage, work, minutes);
        }
    }

    /**
     * A person has put the cell onto another channel of its board.
     *
     * @param channel from 0
     */
    record Move(UUID passage, long seen, int channel) implements OnPassage {
        public Move {
            requireNonNull(passage);
        }

        @Override
        public String name() {
            return "move";
        }

        @Override
        public String text() {
            return joined(name(), passage, channel);
        }
    }

    /**
     * A cell that left its string is to finish on this load of its own.
     *
     * @param ohms 0.01 to 100000
     * @param switched whether its channel's switch closes it; otherwise hands do
     */
    record Load(UUID passage, long seen, double ohms, boolean switched) implements OnPassage {
        /** Least ohms. */
        public static final double LEAST_OHMS = 0.01;

        /** Most ohms. */
        public static final double MOST_OHMS = 100_000;

        public Load {
            requireNonNull(passage);
            if (!(ohms >= LEAST_OHMS && ohms <= MOST_OHMS)) {
                throw new IllegalArgumentException("ohms are " + LEAST_OHMS + " to " + MOST_OHMS + ", not " + ohms);
            }
        }

        @Override
        public String name() {
            return "own load";
        }

        @Override
        public String text() {
            return joined(name(), passage, ohms, switched);
        }
    }

    /**
     * A person looks for the cell: let the lamp at its channel blink.
     *
     * @param seconds 0 to 255; 0 stops it
     */
    record Blink(UUID passage, long seen, int seconds) implements OnPassage {
        /** Most seconds. */
        public static final int MOST_SECONDS = 255;

        public Blink {
            requireNonNull(passage);
            requireWithin("seconds", seconds, 0, MOST_SECONDS);
        }

        @Override
        public String name() {
            return "blink";
        }

        @Override
        public String text() {
            return joined(name(), passage, seconds);
        }
    }

    private static void requireWithin(String what, int number, int least, int most) {
        if (number < least || number > most) {
            throw new IllegalArgumentException(what + " are " + least + " to " + most + ", not " + number);
        }
    }

    /** Joined by a character that no name may hold. */
    private static String joined(Object... parts) {
        return Arrays.stream(parts).map(Object::toString).collect(Collectors.joining("\u001f"));
    }
}
