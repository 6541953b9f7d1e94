package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ebbwatch.passage.ContactInput.Means;

/** What the contacts of the rack's boards say. A contact is believed once two scans in a row agree. */
final class Contacts {
    private final Map<String, List<ContactInput>> wired = new HashMap<>();
    private final Map<String, Set<Means>> before = new HashMap<>();
    private final Map<String, Set<Means>> standing = new HashMap<>();

    void wire(String board, Collection<ContactInput> inputs) {
        wired.put(board, List.copyOf(inputs));
    }

    List<ContactInput> wired(String board) {
        return wired.getOrDefault(board, List.of());
    }

    /**
     * Takes the contacts of one scan; says whether what is believed changed.
     *
     * @param contacts bit n for a closed input n
     * @param inputs how many the board has
     */
    boolean follow(String board, int contacts, int inputs) {
        if (wired(board).isEmpty()) {
            return false;
        }
        Set<Means> now = EnumSet.noneOf(Means.class);
        wired(board).stream()
                .filter(contact -> contact.input() < inputs && contact.isTripped(contacts))
                .forEach(contact -> now.add(contact.means()));
        boolean agreed = now.equals(before.put(board, now));
        if (!agreed || now.equals(standing(board))) {
            return false;
        }
        standing.put(board, now);
        return true;
    }

    /** What the contacts of a board say now. */
    Set<Means> standing(String board) {
        return standing.getOrDefault(board, Set.of());
    }

    boolean stands(Means means) {
        return standing.values().stream().anyMatch(said -> said.contains(means));
    }

    /** A line for each input of a board that has not so many. */
    List<String> missing(String board, int inputs) {
        List<String> lines = new ArrayList<>();
        for (ContactInput contact : wired(board)) {
            if (contact.input() >= inputs) {
                lines.add("Board " + board + " has no contact input " + contact.input() + ": " + contact.means()
                        + " is not watched there.");
            }
        }
        return lines;
    }
}
