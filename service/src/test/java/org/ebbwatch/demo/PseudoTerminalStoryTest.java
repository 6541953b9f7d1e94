package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.f4b6a3.uuid.UuidCreator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's whole story through pseudo-terminals, the serial library and the storage, on a machine kept busy. */
class PseudoTerminalStoryTest {
    private static final int SPEED = 20_000;
    private static final long BUSY_NANOS = 15_000_000_000L;

    @TempDir
    Path records;

    @Test
    void every_scripted_fault_is_found_and_a_busy_machine_causes_no_finding() throws IOException, InterruptedException {
        var told = new ByteArrayOutputStream();
        keepBusy();
        boolean asScripted = new DemoRun(new PrintStream(told, true, StandardCharsets.UTF_8), false)
                .run(
                        SPEED,
                        3,
                        boards -> new RunningRack(
                                boards,
                                StoredRack.open(records),
                                NightHours.usual(ZoneOffset.UTC),
                                List.of(),
                                Optional.empty(),
                                UuidCreator::getTimeOrderedEpoch,
                                new SystemHostClock()));
        assertThat(asScripted).as(told.toString(StandardCharsets.UTF_8)).isTrue();
    }

    /** As many threads as the machine has processors, each doing nothing but that for the first quarter of a minute. */
    private static void keepBusy() {
        long endNanos = System.nanoTime() + BUSY_NANOS;
        for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
            var thread = new Thread(() -> {
                while (System.nanoTime() < endNanos) {
                    Thread.onSpinWait();
                }
            });
            thread.setDaemon(true);
            thread.start();
        }
    }
}
