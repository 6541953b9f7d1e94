package org.ebbwatch.passage;

import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.Wish;

/** Tells entries by which something changes that a person goes by from readings and checks that come and go. */
final class Change {
    private Change() {}

    /** Whether a person who saw the passage before this entry should look again before acting. */
    static boolean isOne(Entry entry, Outcome outcome) {
        boolean routine = entry instanceof Entry.Scan || entry instanceof Entry.LeadChecked;
        return !routine || outcome.events().stream().anyMatch(Change::isForPeople);
    }

    private static boolean isForPeople(Outcome.Event event) {
        return !(event instanceof Outcome.Wished wished) || isForPeople(wished.wish());
    }

    /** Whether a wish asks a person, and not the board. */
    static boolean isForPeople(Wish wish) {
        return switch (wish) {
            case ASK_PUT_ON, ASK_TAKE_OFF, ASK_TIE_OFF, ASK_PART, ASK_RELEASE, ASK_METER -> true;
            case CLOSE_LOAD, OPEN_LOAD, CHECK_LEAD, OPEN_STRING -> false;
        };
    }
}
