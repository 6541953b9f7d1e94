package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the crash campaign. */
class CrashRackTest {
    private static final int KILLS = 4;

    @TempDir
    Path folder;

    @Test
    void kills_under_load_lose_nothing_that_was_told_and_at_most_two_seconds_of_readings() throws Exception {
        try (CrashRack rack = new CrashRack(folder, 1)) {
            for (int kill = 0; kill < KILLS; kill++) {
                rack.crash();
            }
            rack.finish();
            System.out.println(rack.work() + rack.missing());
            assertThat(rack.trouble().found()).isEmpty();
            assertThat(rack.missing()).allMatch(scans -> scans <= 2);
        }
    }
}
