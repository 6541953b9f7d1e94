package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.passage.ContactInput.Means;

/** What the contacts of the rack's boards say. A contact is believed once two scans in a row agree. */
final class Contacts {
    private final Loads loads;
    private final RackObserver observer;
    private final Map<String, List<ContactInput>> wired = new HashMap<>();
    private final Map<String, Set<Means>> before = new HashMap<>();
    private final Map<String, Set<Means>> standing = new HashMap<>();

    Contacts(Loads loads, RackObserver observer) {
        this.loads = loads;
        this.observer = observer;
    }

    void wire(String board, Collection<ContactInput> inputs) {
        wired.put(board, List.copyOf(inputs));
    }

    private List<ContactInput> wired(String board) {
        return wired.getOrDefault(board, List.of());
    }

    /**
     * Takes the contacts of one scan, tells what changed, and has every load opened where smoke is new on the rack. Says whether
     * anything changed.
     */
    boolean follow(BoardWatch board, BoardScan scan) {
        Set<Means> now = EnumSet.noneOf(Means.class);
        wired(board.name()).stream()
                .filter(contact -> contact.input() < board.contactInputs() && contact.isTripped(scan.contacts()))
                .forEach(contact -> now.add(contact.means()));
        boolean agreed = now.equals(before.put(board.name(), now));
        if (!agreed || now.equals(standing(board.name()))) {
            return false;
        }
        boolean smokeStood = smokeStands();
        standing.put(board.name(), now);
        observer.contacts(board.name(), scan.eventMillis(), now);
        if (smokeStands() && !smokeStood) {
            loads.openAllForSmoke();
        }
        return true;
    }

    private Set<Means> standing(String board) {
        return standing.getOrDefault(board, Set.of());
    }

    /** Whether a contact anywhere on the rack reports smoke. */
    boolean smokeStands() {
        return standing.values().stream().anyMatch(said -> said.contains(Means.SMOKE));
    }

    /** A line for each input that a board has not; none while the board is not known. */
    List<String> missing(BoardWatch board) {
        List<String> lines = new ArrayList<>();
        for (ContactInput contact : wired(board.name())) {
            if (board.isKnown() && contact.input() >= board.contactInputs()) {
                lines.add("Board " + board.name() + " has no contact input " + contact.input() + ": " + contact.means()
                        + " is not watched there.");
            }
        }
        return lines;
    }
}
