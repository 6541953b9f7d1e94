package org.ebbwatch.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class LinkKeyTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve(LinkKey.NAME);
    }

    @Test
    void the_key_is_made_once_and_is_another_in_every_folder(@TempDir Path other) throws IOException {
        byte[] key = LinkKey.of(folder);

        assertThat(key).hasSize(32);
        assertThat(LinkKey.of(folder)).isEqualTo(key);
        assertThat(LinkKey.of(other)).isNotEqualTo(key);
        assertThat(folder).isDirectoryContaining(file()::equals);
        assertThat(folder.toFile().list()).hasSize(1);
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "its file systems have other permissions")
    void only_its_owner_may_read_it() throws IOException {
        LinkKey.of(folder);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file())))
                .isEqualTo("rw-------");
    }

    @Test
    void a_damaged_key_is_told_and_kept() throws IOException {
        for (String damaged : new String[] {"", "12", "zz".repeat(32)}) {
            Files.writeString(file(), damaged);
            assertThatThrownBy(() -> LinkKey.of(folder))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining(LinkKey.NAME)
                    .hasMessageContaining("remove it");
            assertThat(file()).hasContent(damaged);
        }
    }
}
