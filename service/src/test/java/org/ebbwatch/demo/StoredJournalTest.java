package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Refolded;
import org.ebbwatch.passage.StoredRack;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is stored of a passage, folded again, is the passage as it was watched. */
class StoredJournalTest {
    private static final int SCENARIOS = 10;
    private static final int CELLS = 4;

    @TempDir
    Path folder;

    static List<Long> scenarios() {
        return new Random(20_261_125).longs(SCENARIOS).boxed().toList();
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void folding_a_stored_journal_again_gives_exactly_the_recorded_phases_and_findings(long scenario) {
        Map<UUID, PassageView> watched = new HashMap<>();
        long hours = 30L + Math.floorMod(scenario, 70);
        try (StoredRack storage = StoredRack.open(folder)) {
            var rack = new InProcessRack(RandomBench.of(scenario, CELLS), scenario, 2_000, storage, storage);
            rack.checkInAll(Procedure.careful());
            rack.run(() -> false, Duration.ofHours(hours).toMillis());
            rack.passages().forEach(passage -> watched.put(passage.id(), passage));
        }

        List<String> recorded = new ArrayList<>();
        try (StoredRack storage = StoredRack.open(folder)) {
            for (PassageCard card : storage.cards()) {
                Refolded again = storage.refold(card);
                recorded.addAll(storage.recorded(card));
                PassageView before = watched.get(card.id());
                assertThat(again.events()).containsExactlyElementsOf(storage.recorded(card));
                assertThat(again.judge().phase()).isEqualTo(before.phase());
                assertThat(again.judge().findings()).containsExactlyElementsOf(before.findings());
                assertThat(again.judge().ampereHours()).isEqualTo(before.ampereHours());
            }
        }
        assertThat(watched).hasSize(CELLS);
        assertThat(recorded).isNotEmpty();
    }
}
