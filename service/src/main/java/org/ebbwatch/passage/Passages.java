package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
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
    private final Map<String, List<OpenPassage>> byBoard = new HashMap<>();
    private final List<OpenPassage> over = new ArrayList<>();

    void add(OpenPassage passage) {
        open.put(passage.card().id(), passage);
        byBoard.computeIfAbsent(passage.card().board(), board -> new ArrayList<>())
                .add(passage);
    }

    /** Those that are not over, and those that became so since {@link #sortOut()}. */
    Collection<OpenPassage> open() {
        return open.values();
    }

    /** Those of them on one board; asked for with every scan, so it costs the same however many boards there are. */
    List<OpenPassage> on(String board) {
        return List.copyOf(byBoard.getOrDefault(board, List.of()));
    }

    /** The one that is on a channel and not over. */
    Optional<OpenPassage> on(String board, int channel) {
        return on(board).stream()
                .filter(passage -> passage.card().channel() == channel
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
        boolean any = open.values().removeIf(passage -> passage.judge().phase().isOver() && over.add(passage));
        if (any) {
            byBoard.values().forEach(here -> here.removeAll(over));
        }
    }

    List<PassageView> views() {
        return Stream.concat(over.stream(), open.values().stream())
                .map(OpenPassage::view)
                .toList();
    }
}
