package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.util.UUID;

/** What an alarm is about. With the kind it names an alarm: there is never more than one alive. */
public sealed interface Subject {

    /** One cell's passage. */
    record Passage(UUID id) implements Subject {
        public Passage {
            requireNonNull(id);
        }

        @Override
        public String text() {
            return PASSAGE + id;
        }
    }

    /** A board with all its channels. */
    record Board(String name) implements Subject {
        public Board {
            requireNonNull(name);
        }

        @Override
        public String text() {
            return BOARD + name;
        }
    }

    /** Everything one service watches. */
    record Rack() implements Subject {
        @Override
        public String text() {
            return RACK;
        }
    }

    /** How passages begin in text. */
    String PASSAGE = "passage ";

    /** How boards begin in text. */
    String BOARD = "board ";

    /** The rack in text. */
    String RACK = "rack";

    /** A text that {@link #parse} reads. */
    String text();

    /**
     * Reads what {@link #text} gave.
     *
     * @throws IllegalArgumentException if it is no such text
     */
    static Subject parse(String text) {
        if (text.equals(RACK)) {
            return new Rack();
        }
        if (text.startsWith(PASSAGE)) {
            return new Passage(UUID.fromString(text.substring(PASSAGE.length())));
        }
        if (text.startsWith(BOARD)) {
            return new Board(text.substring(BOARD.length()));
        }
        throw new IllegalArgumentException("no subject of an alarm: " + text);
    }
}
