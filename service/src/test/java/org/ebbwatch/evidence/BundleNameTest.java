package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BundleNameTest {
    private static final UUID ID = UUID.fromString("01900000-0000-7000-8000-0123456789ab");

    @ParameterizedTest
    @CsvSource({
        "A-17, A-17-456789ab.ebb.zip",
        "drill 3, drill-3-456789ab.ebb.zip",
        "Zellé Ü, Zelle-U-456789ab.ebb.zip",
        "../../etc/passwd, etc-passwd-456789ab.ebb.zip",
        "C:\\x, C-x-456789ab.ebb.zip",
        "-rf, rf-456789ab.ebb.zip",
        ".hidden, hidden-456789ab.ebb.zip",
        "=1+1, 1-1-456789ab.ebb.zip",
        "電池, cell-456789ab.ebb.zip",
        "nul, nul-456789ab.ebb.zip"
    })
    void a_tag_becomes_a_name_that_every_file_system_takes(String tag, String name) {
        assertThat(BundleName.of(tag, ID)).isEqualTo(name);
    }

    @Property
    void whatever_the_tag_the_name_is_plain_and_short(@ForAll String tag, @ForAll long low) {
        assertThat(BundleName.of(tag, new UUID(7, low)))
                .matches("[A-Za-z0-9]+(-[A-Za-z0-9]+)*-[0-9a-f]{8}\\.ebb\\.zip")
                .hasSizeLessThanOrEqualTo(60);
    }
}
