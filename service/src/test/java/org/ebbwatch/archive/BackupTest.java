package org.ebbwatch.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.Refolded;
import org.ebbwatch.passage.StoredRack;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    private static final String MADE = "2026-11-25T21:00:00Z";

    @TempDir
    Path folder;

    private Path records() {
        return folder.resolve("records");
    }

    private Path backup() {
        return folder.resolve("b.backup.zip");
    }

    /** What is told of every passage, up to some event time. */
    private static Map<UUID, List<Object>> told(StoredRack rack, long untilMillis) {
        Map<UUID, List<Object>> told = new HashMap<>();
        for (PassageCard card : rack.cards()) {
            List<Object> entries = new ArrayList<>();
            rack.read(card, new JournalTaker() {
                @Override
                public boolean scan(long sequence, Entry.Scan scan) {
                    return scan.eventMillis() <= untilMillis && entries.add(scan);
                }

                @Override
                public boolean entry(long sequence, KeptEntry kept) {
                    return kept.entry().eventMillis() <= untilMillis && entries.add(kept);
                }
            });
            told.put(card.id(), entries);
        }
        return told;
    }

    private static Map<UUID, String> verdicts(StoredRack rack) {
        Map<UUID, String> verdicts = new HashMap<>();
        for (PassageCard card : rack.cards()) {
            Refolded refolded = rack.refold(card);
            verdicts.put(
                    card.id(), refolded.judge().phase() + " " + refolded.judge().reason() + " " + refolded.told());
        }
        return verdicts;
    }

    @Test
    void what_was_restored_has_the_same_passages_readings_and_verdicts() throws IOException {
        try (var rack = new WorkingRack(records())) {
            UUID one = rack.checkIn(0, "A-17");
            rack.checkIn(1, "A-18");
            rack.seconds(1_400, 40_000);
            rack.act(one, Act.PUT_ON);
            rack.seconds(700, 39_000);
            new Backup(rack).write(backup(), MADE);
            assertThat(Restore.into(backup(), folder.resolve("restored"))).isEqualTo(MADE);
            try (StoredRack restored = StoredRack.open(folder.resolve("restored"))) {
                assertThat(told(restored, Long.MAX_VALUE)).isEqualTo(told(rack.storage(), Long.MAX_VALUE));
                for (PassageCard card : restored.cards()) {
                    assertThat(restored.recorded(card)).isEqualTo(rack.storage().recorded(card));
                }
                assertThat(verdicts(restored))
                        .isEqualTo(verdicts(rack.storage()))
                        .hasSize(2);
            }
        }
    }

    @Test
    void under_load_nothing_is_missing_that_was_there_when_the_backup_began() throws Exception {
        try (var rack = new WorkingRack(records())) {
            UUID one = rack.checkIn(0, "A-17");
            rack.checkIn(1, "A-18");
            rack.seconds(1_000, 40_000);
            rack.act(one, Act.PUT_ON);
            var stop = new AtomicBoolean();
            var begun = new CountDownLatch(1);
            var load = new Thread(() -> {
                while (!stop.get()) {
                    rack.seconds(30, 39_000);
                    rack.act(one, Act.TAKE_OFF);
                    rack.seconds(30, 40_000);
                    rack.act(one, Act.PUT_ON);
                    begun.countDown();
                }
            });
            load.start();
            begun.await();
            for (int i = 0; i < 5; i++) {
                Path file = folder.resolve(i + ".backup.zip");
                long before = rack.eventMillis();
                new Backup(rack).write(file, MADE);
                Path restored = folder.resolve("restored-" + i);
                Restore.into(file, restored);
                try (StoredRack copy = StoredRack.open(restored)) {
                    Map<UUID, List<Object>> original;
                    synchronized (rack) {
                        original = told(rack.storage(), before);
                    }
                    assertThat(told(copy, before)).isEqualTo(original);
                    assertThat(original.get(one)).hasSizeGreaterThan(1_000);
                    copy.cards().forEach(copy::takeUp);
                }
            }
            stop.set(true);
            load.join();
        }
    }

    @Test
    void a_backup_holds_no_key_and_no_token() throws IOException {
        try (var rack = new WorkingRack(records())) {
            Files.writeString(records().resolve("signing-key"), "secret");
            Files.writeString(records().resolve("operator-token.sha256"), "secret");
            new Backup(rack).write(backup(), MADE);
        }
        Restore.into(backup(), folder.resolve("restored"));
        try (var files = Files.list(folder.resolve("restored"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("ebbwatch.mv.db", "readings.tail");
        }
    }

    @Test
    void a_backup_that_is_there_is_never_overwritten_and_nothing_unfinished_is_left() throws IOException {
        try (var rack = new WorkingRack(records())) {
            Files.writeString(backup(), "mine");
            assertThatThrownBy(() -> new Backup(rack).write(backup(), MADE)).hasMessageContaining("is there already");
            assertThat(backup()).hasContent("mine");
        }
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("records", "b.backup.zip");
        }
    }

    @Test
    void records_are_never_restored_over() throws IOException {
        try (var rack = new WorkingRack(records())) {
            new Backup(rack).write(backup(), MADE);
        }
        assertThatThrownBy(() -> Restore.into(backup(), records())).hasMessageContaining("is not empty");
    }

    @Test
    void a_damaged_backup_leaves_no_records() throws IOException {
        try (var rack = new WorkingRack(records())) {
            rack.checkIn(0, "A-17");
            rack.seconds(100, 40_000);
            new Backup(rack).write(backup(), MADE);
        }
        byte[] good = Files.readAllBytes(backup());
        for (int at : new int[] {100, good.length / 2, good.length - 30}) {
            byte[] bad = good.clone();
            bad[at] ^= 0x10;
            Files.write(backup(), bad);
            Path restored = folder.resolve("restored-" + at);
            assertThatThrownBy(() -> Restore.into(backup(), restored)).isInstanceOf(IOException.class);
            if (Files.exists(restored)) {
                assertThat(restored).isEmptyDirectory();
            }
        }
    }
}
