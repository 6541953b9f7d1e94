package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the long run: two nights of one cell, under a wall clock that is set to and fro. */
class LongRunTest {
    private static final long DAY_MILLIS = 86_400_000;
    private static final long SPARE_BYTES = 32L << 20;

    @TempDir
    Path records;

    @Test
    void a_night_more_takes_no_thread_no_descriptor_and_no_heap() throws Exception {
        try (LongRack rack = new LongRack(records, 1, new SteppingClock())) {
            rack.runTo(DAY_MILLIS);
            Means after = Means.now();
            rack.runTo(2 * DAY_MILLIS);
            Means later = Means.now();

            assertThat(later.threads()).isLessThanOrEqualTo(after.threads() + 2);
            assertThat(later.descriptors()).isLessThanOrEqualTo(after.descriptors() + 4);
            assertThat(later.heapBytes()).isLessThan(after.heapBytes() + SPARE_BYTES);
        }
        assertThat(LongRack.recorded(records))
                .as("whatever the wall clock said, a hold lasted as long as it should")
                .anyMatch(line -> line.contains("DRAIN REST held below the drain limit for 12 h"));
    }
}
