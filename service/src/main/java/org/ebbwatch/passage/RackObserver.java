package org.ebbwatch.passage;

import java.util.List;
import java.util.Set;
import org.ebbwatch.passage.ContactInput.Means;

/** Hears what becomes of a rack, under the rack's lock. What it writes down in these calls is committed with the journal. */
public interface RackObserver {

    /** Nobody looks. */
    RackObserver NONE = new RackObserver() {
        @Override
        public void changed(List<PassageStanding> passages) {}

        @Override
        public void unheard(String board, long eventMillis) {}

        @Override
        public void heard(String board) {}

        @Override
        public void committed() {}
    };

    /** The phase or the findings of these passages changed at one moment. */
    void changed(List<PassageStanding> passages);

    /** A board is silent that was not heard yet and on which cells wait to be checked in; no passage can say so. */
    void unheard(String board, long eventMillis);

    /** The board on which cells waited was heard. */
    void heard(String board);

    /**
     * What the contacts of a board say has changed.
     *
     * @param standing all that they say now
     */
    default void contacts(String board, long eventMillis, Set<Means> standing) {}

    /** What was told last is written down, or will be once storage is back. People may be told. */
    void committed();
}
