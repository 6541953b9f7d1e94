package org.ebbwatch.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.ebbwatch.bench.ReplugRig.Plug;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link ReplugBench}; how long each step takes is measured there. */
class ReplugTest {
    @TempDir
    Path directory;

    @Test
    @EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made by Linux calls here")
    void every_replug_is_told_as_silence_and_ends_and_leaves_no_thread_or_descriptor_behind()
            throws IOException, InterruptedException {
        try (ReplugRig rig = new ReplugRig(1, directory)) {
            Plug plug = rig.plugs().get(0);
            plug.begin();
            plug.replug();
            Held before = Held.now();
            plug.replug();
            plug.replug();
            Held after = Held.now();
            assertThat(after.threads()).isLessThanOrEqualTo(before.threads());
            assertThat(after.descriptors()).isLessThanOrEqualTo(before.descriptors());
        }
    }
}
