package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.ebbwatch.passage.RackView.PassageView;

/** The passages of a rack, those that are over among them. Not thread-safe. */
final class Passages {
    private final Map<UUID, OpenPassage> open = new LinkedHashMap<>();
    private final List<OpenPassage> over = new ArrayList<>();

    void add(OpenPassage passage) {
        open.put(passage.card().id(), passage);
    }

    /** Those that are not over, and those that became so since {@link #sortOut()}. */
    Collection<OpenPassage> open() {
        return open.values();
    }

    /** Those of them on one board. */
    List<OpenPassage> on(String board) {
        return open.values().stream()
                .filter(passage -> passage.card().board().equals(board))
                .toList();
    }

    /** The one that is on a channel and not over. */
    Optional<OpenPassage> on(String board, int channel) {
        return open.values().stream()
                .filter(passage -> passage.card().board().equals(board)
                        && passage.card().channel() == channel
                        && !passage.judge().phase().isOver())
                .findFirst();
    }

    /** Open or over. */
    Optional<OpenPassage> find(UUID id) {
        OpenPassage found = open.get(id);
        return found != null
                ? Optional.of(found)
                : over.stream()
                        .filter(passage -> passage.card().id().equals(id))
                        .findFirst();
    }

    /** The one that is not over and whose cell has this tag. */
    Optional<OpenPassage> tagged(String tag) {
        return open.values().stream()
                .filter(passage -> passage.card().cell().tag().equals(tag)
                        && !passage.judge().phase().isOver())
                .findFirst();
    }

    /** Puts aside what is over. */
    void sortOut() {
        open.values().removeIf(passage -> passage.judge().phase().isOver() && over.add(passage));
    }

    List<PassageView> views() {
        return Stream.concat(over.stream(), open.values().stream())
                .map(OpenPassage::view)
                .toList();
    }
}
