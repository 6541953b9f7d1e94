package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.ebbwatch.judge.Phase;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records that an earlier tagged version of the service wrote, opened by this one. */
class GoldenRecordsTest {

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = "0.1.0")
    void open_migrate_and_fold_to_the_phases_they_were_left_in(String version) throws IOException {
        unpack(version);

        Map<String, Phase> phases = new HashMap<>();
        try (StoredRack storage = StoredRack.open(folder)) {
            for (PassageCard card : storage.cards()) {
                phases.put(card.cell().tag(), storage.refold(card).judge().phase());
                assertThat(storage.recorded(card)).isNotEmpty();
            }
            assertThat(storage.openCards())
                    .allSatisfy(card ->
                            assertThat(storage.takeUp(card).otherPhase()).isEmpty());
            storage.commit();
        }
        assertThat(phases)
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        "released", Phase.RELEASED,
                        "tied off", Phase.TIE_OFF,
                        "resting", Phase.REST,
                        "draining", Phase.DRAIN,
                        "held", Phase.HELD));
    }

    @ParameterizedTest
    @ValueSource(strings = "0.1.0")
    void are_the_same_after_they_were_taken_up(String version) throws IOException {
        unpack(version);
        List<List<String>> before = recorded();
        try (StoredRack storage = StoredRack.open(folder)) {
            storage.openCards().forEach(storage::takeUp);
            storage.commit();
        }
        assertThat(recorded()).isEqualTo(before);
    }

    private List<List<String>> recorded() {
        try (StoredRack storage = StoredRack.open(folder)) {
            return storage.cards().stream().map(storage::recorded).toList();
        }
    }

    private void unpack(String version) throws IOException {
        try (InputStream file = GoldenRecordsTest.class.getResourceAsStream("/records/" + version + ".zip");
                ZipInputStream zip = new ZipInputStream(file)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                Files.copy(zip, folder.resolve(entry.getName()));
            }
        }
    }
}
