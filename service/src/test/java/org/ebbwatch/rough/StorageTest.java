package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.TcpPort;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the storage campaign: real file systems that fail under a watch. */
class StorageTest {
    private static final Duration PATIENCE = Duration.ofSeconds(40);
    private static final String BOARD = "left";

    @TempDir
    Path folder;

    private SmallDisk disk;
    private LineRack rack;

    @BeforeEach
    void watchOnASmallDisk() throws Exception {
        Optional<String> obstacle = SmallDisk.obstacle();
        assumeTrue(obstacle.isEmpty(), () -> obstacle.orElse(""));
        disk = SmallDisk.mount(folder, 8);
        rack = new LineRack(disk.folder().resolve("records"), 8, 50)
                .board(BOARD, "SIM-DISK", TcpPort.listen(0), Harm.NONE, List.of())
                .start();
        await().atMost(PATIENCE).until(() -> rack.view(BOARD).link() == LinkState.CONNECTED);
        Thread.sleep(2_000);
    }

    @AfterEach
    void takeDown() throws Exception {
        if (disk != null) {
            rack.close();
            disk.close();
        }
    }

    @Test
    void a_full_disk_is_told_and_nothing_is_lost_once_there_is_room() throws Exception {
        disk.fill();
        blindOnDisk();
        disk.makeRoom();
        keepsAgain();
    }

    @Test
    void a_disk_that_can_only_be_read_is_told_and_nothing_is_lost_once_it_is_mended() throws Exception {
        disk.breakDown();
        blindOnDisk();
        disk.mend();
        keepsAgain();
    }

    private void blindOnDisk() {
        await().atMost(PATIENCE).until(() -> stands(AlarmKind.STORAGE_FAULT));
        long before = rack.view(BOARD).eventMillis();
        rack.simulated(BOARD)
                .call(it -> {
                    it.addFault(Fault.on(0, FaultKind.WARMING, Trigger.at(0))
                            .with(Map.of("watts", 50.0, "riseMinutes", 0.0)));
                    return it;
                })
                .join();
        await().atMost(PATIENCE).until(() -> stands(AlarmKind.HOT));
        assertThat(rack.view(BOARD).eventMillis()).isGreaterThan(before);
        assertThat(rack.view(BOARD).link()).isEqualTo(LinkState.CONNECTED);
    }

    private void keepsAgain() {
        await().atMost(PATIENCE)
                .untilAsserted(() -> assertThat(rack.storageTrouble()).isEmpty());
        var trouble = new Trouble();
        LineRack.Kept kept = rack.stop(trouble);
        System.out.println(kept + " of " + rack.sent(BOARD).size());
        assertThat(trouble.found()).isEmpty();
        assertThat(kept.findings()).contains("HOT");
        assertThat(kept.scans().get(BOARD).holes()).isZero();
    }

    private boolean stands(AlarmKind kind) {
        return rack.rack().alarms().alarms().stream()
                .filter(alarm -> alarm.kind() == kind)
                .map(AlarmView::state)
                .anyMatch(state -> state != AlarmState.RETURNED_UNACKNOWLEDGED);
    }
}
