package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.sim.rack.SimBoard;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the storage campaign: real file systems that fail under a watch. */
@Timeout(600)
class StorageTest {
    private static final long FORCE_MILLIS = 100;

    @TempDir
    Path folder;

    @Test
    void a_full_disk_is_told_of_and_nothing_is_lost_once_there_is_room() throws Exception {
        requireDisks();
        try (DiskNight night = new DiskNight(folder)) {
            holds(night.run(SmallDisk::fill, SmallDisk::makeRoom));
        }
    }

    @Test
    void a_disk_that_can_only_be_read_is_told_of_and_nothing_is_lost_once_it_is_mended() throws Exception {
        requireDisks();
        try (DiskNight night = new DiskNight(folder)) {
            holds(night.run(SmallDisk::breakDown, SmallDisk::mend));
        }
    }

    @Test
    void a_service_killed_on_a_full_disk_watches_when_it_is_started_on_it() throws Exception {
        requireDisks();
        try (SmallDisk disk = SmallDisk.mount(folder, 16);
                ServeNight night = new ServeNight(folder, disk.folder().resolve("records"), Map.of())) {
            assertThat(night.start()).isPresent();
            disk.fill();
            assertThat(night.await(() -> night.alarms().contains("STORAGE_FAULT")))
                    .isPresent();
            night.service().kill();
            assertThat(night.start()).as(night.service().lastSaid()).isPresent();
            assertThat(night.heat()).isPresent();
        }
    }

    @Test
    void a_disk_that_is_slow_to_force_delays_neither_watch_nor_loads() throws Exception {
        Optional<Map<String, String>> slow = SlowDisk.environment(folder, FORCE_MILLIS);
        assumeTrue(slow.isPresent(), "there is no gcc to make a slow disk with");
        try (ServeNight night =
                new ServeNight(folder, Files.createDirectory(folder.resolve("records")), slow.orElseThrow())) {
            assertThat(night.start()).isPresent();
            assertThat(night.heat()).isPresent();
            assertThat(night.alarms()).doesNotContain("SILENT", "STORAGE_FAULT");
            assertThat(night.board().call(SimBoard::isHostLost).join()).isFalse();
        }
    }

    private static void requireDisks() {
        Optional<String> obstacle = SmallDisk.obstacle();
        assumeTrue(obstacle.isEmpty(), () -> obstacle.orElse(""));
    }

    private static void holds(DiskNight.Result result) {
        assertThat(result.trouble()).isEmpty();
        assertThat(result.holes())
                .as("what was read meanwhile was kept in memory")
                .isZero();
    }
}
