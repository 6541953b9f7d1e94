package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the clock campaign. */
class OddClocksTest {
    private static final long SCENARIO = 7;
    private static final Duration TIME = Duration.ofHours(9);

    @TempDir
    Path folder;

    @Test
    void whatever_the_clocks_say_the_same_is_judged_and_written_down() {
        List<String> steady = ClockTrial.run(folder.resolve("steady"), SCENARIO, TIME, 1, OddClocks.NONE);
        assertThat(steady).anyMatch(line -> line.contains("PhaseChanged"));
        OddClocks.all().forEach((name, odd) -> assertThat(ClockTrial.run(folder.resolve(name), SCENARIO, TIME, 1, odd))
                .as(name)
                .isEqualTo(steady));
    }
}
