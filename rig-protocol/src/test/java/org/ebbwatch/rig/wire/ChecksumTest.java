package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What the JDK's CRC-32C does, since the protocol rests on it. Source: the published catalogue of checksums. */
class ChecksumTest {
    static Stream<Arguments> checkValues() {
        return Stream.of(
                Arguments.of("123456789".getBytes(StandardCharsets.US_ASCII), 0xE306_9283L),
                Arguments.of(new byte[32], 0x8A91_36AAL),
                Arguments.of(Bytes.hex("FF ".repeat(32)), 0x62A8_AB43L),
                Arguments.of(Bytes.hex("00 01 .. 1F"), 0x46DD_794EL),
                Arguments.of(new byte[0], 0L));
    }

    @ParameterizedTest
    @MethodSource("checkValues")
    void the_checksum_is_the_castagnoli_one_of_the_catalogue(byte[] bytes, long checksum) {
        assertThat(of(bytes)).isEqualTo(checksum);
    }

    @Property
    void the_checksum_is_the_one_the_document_spells_out_bit_by_bit(@ForAll byte[] bytes) {
        assertThat((int) of(bytes)).isEqualTo(BitwiseCrc32c.of(bytes));
    }

    private static long of(byte[] bytes) {
        CRC32C crc = new CRC32C();
        crc.update(bytes, 0, bytes.length);
        return crc.getValue();
    }
}
