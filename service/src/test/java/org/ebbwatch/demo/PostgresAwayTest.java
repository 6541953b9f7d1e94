package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import org.awaitility.Awaitility;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Refolded;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.postgres.Postgres;
import org.ebbwatch.store.PostgresLogin;
import org.ebbwatch.store.Records;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rack whose PostgreSQL database hangs up, is killed in the middle of its work, and comes back: nothing is lost or doubled. */
class PostgresAwayTest {
    private static final int CELLS = 4;
    private static final int ATTEMPTS = 60;
    private static final long EMPTY_QUEUE_BYTES = 24;
    private static final long SCENARIO = 20_261_125;

    @TempDir
    Path folder;

    private Postgres postgres;
    private PostgresLogin login;

    @BeforeEach
    void startPostgres() {
        postgres = Postgres.start(null);
        login = postgres.database();
    }

    @AfterEach
    void stopPostgres() {
        if (postgres != null) {
            postgres.close();
        }
    }

    @Test
    void a_rack_is_watched_while_its_database_hangs_up_and_is_killed_and_folds_again_to_what_was_told()
            throws Exception {
        Map<UUID, PassageView> watched;
        try (StoredRack storage = open(folder)) {
            InProcessRack rack = rack(storage);
            rack.run(() -> false, hours(6));
            postgres.hangUp();
            rack.run(() -> false, hours(30));
            assertThat(storage.trouble())
                    .hasValueSatisfying(why -> assertThat(why).contains("the database is away"));
            assertThat(Files.size(folder.resolve("facts.queue"))).isGreaterThan(EMPTY_QUEUE_BYTES);
            postgres.goOn();
            awaitCaughtUp(storage);

            var killing = new AtomicBoolean(true);
            var killer = new Thread(() -> killNowAndAgain(killing), "killer");
            killer.start();
            rack.run(() -> false, hours(70));
            killing.set(false);
            killer.join();
            awaitCaughtUp(storage);
            watched = views(rack);
        }
        try (StoredRack storage = open(folder)) {
            requireAll(storage, watched);
        }
    }

    @Test
    void what_was_told_while_the_database_was_away_outlives_the_service() throws IOException {
        Path crashed = Files.createDirectory(folder.resolve("crashed"));
        Path alive = folder.resolve("alive");
        Map<UUID, PassageView> watched;
        try (StoredRack storage = open(alive)) {
            InProcessRack rack = rack(storage);
            rack.run(() -> false, hours(6));
            postgres.kill();
            rack.run(() -> false, hours(40));
            storage.flush();
            watched = views(rack);
            copy(alive, crashed);
        }
        assertThat(crashed.resolve("facts.queue")).exists();
        postgres.startAgain();
        try (StoredRack storage = open(crashed)) {
            requireAll(storage, watched);
        }
    }

    private StoredRack open(Path records) {
        return StoredRack.of(Records.inPostgres(records, login, ATTEMPTS));
    }

    private static InProcessRack rack(StoredRack storage) {
        var rack = new InProcessRack(RandomBench.of(SCENARIO, CELLS), SCENARIO, 2_000, storage, storage);
        rack.checkInAll(Procedure.careful());
        return rack;
    }

    private void killNowAndAgain(AtomicBoolean wanted) {
        var random = new Random(SCENARIO);
        do {
            postgres.kill();
            postgres.startAgain();
            Awaitility.await()
                    .pollDelay(Duration.ofMillis(random.nextInt(1_500)))
                    .until(() -> true);
        } while (wanted.get());
    }

    private static void awaitCaughtUp(StoredRack storage) {
        Awaitility.await().atMost(Duration.ofMinutes(2)).until(() -> {
            storage.flush();
            return storage.trouble().isEmpty();
        });
    }

    private static Map<UUID, PassageView> views(InProcessRack rack) {
        Map<UUID, PassageView> views = new HashMap<>();
        rack.passages().forEach(passage -> views.put(passage.id(), passage));
        return views;
    }

    private static void requireAll(StoredRack storage, Map<UUID, PassageView> watched) {
        assertThat(watched).hasSize(CELLS);
        List<PassageCard> cards = storage.cards();
        assertThat(cards).extracting(PassageCard::id).containsExactlyInAnyOrderElementsOf(watched.keySet());
        for (PassageCard card : cards) {
            Refolded again = storage.refold(card);
            PassageView before = watched.get(card.id());
            assertThat(again.events()).isNotEmpty().containsExactlyElementsOf(storage.recorded(card));
            assertThat(again.judge().phase()).isEqualTo(before.phase());
            assertThat(again.judge().findings()).containsExactlyElementsOf(before.findings());
            assertThat(again.judge().ampereHours()).isEqualTo(before.ampereHours());
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (var files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    private static long hours(int hours) {
        return Duration.ofHours(hours).toMillis();
    }
}
