package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CobsTest {
    /**
     * Source: the packet that begins 45 00 is the example of Cheshire and Baker (1999); the others follow from their rules
     * (computed).
     */
    @ParameterizedTest
    @CsvSource({
        "'', 01",
        "00, 01 01",
        "00 00, 01 01 01",
        "00 11 00, 01 02 11 01",
        "11 22 00 33, 03 11 22 02 33",
        "11 22 33 44, 05 11 22 33 44",
        "11 00 00 00, 02 11 01 01 01",
        "45 00 00 2C 4C 79 00 00 40 06 4F 37, 02 45 01 04 2C 4C 79 01 05 40 06 4F 37",
        "DE AD 00 BE EF, 03 DE AD 03 BE EF",
        "01 .. FE, FF 01 .. FE",
        "00 .. FE, 01 FF 01 .. FE",
        "01 .. FF, FF 01 .. FE 02 FF",
        "02 .. FF 00, FF 02 .. FF 01 01",
        "03 .. FF 00 01, FE 03 .. FF 02 01"
    })
    void bytes_and_their_stuffing_belong_together(String plain, String stuffed) {
        assertThat(Bytes.spaced(encode(Bytes.hex(plain)))).isEqualTo(Bytes.spaced(Bytes.hex(stuffed)));
        assertThat(Bytes.spaced(decode(Bytes.hex(stuffed)))).isEqualTo(Bytes.spaced(Bytes.hex(plain)));
    }

    @Test
    void a_full_last_block_may_be_followed_by_an_empty_one() {
        assertThat(decode(Bytes.hex("FF 01 .. FE 01"))).isEqualTo(Bytes.hex("01 .. FE"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "00", "02", "03 11", "05 11 22 33", "03 11 00", "02 11 00 01", "FF 01 .. FD"})
    void what_nothing_stuffs_to_is_not_decoded(String stuffed) {
        byte[] bytes = Bytes.hex(stuffed);
        assertThat(Cobs.decode(bytes, 0, bytes.length, new byte[300], 0)).isEqualTo(Cobs.NOT_DECODABLE);
    }

    @Test
    void only_the_range_asked_for_is_touched() {
        byte[] into = Bytes.hex("AA AA AA AA AA AA");
        assertThat(Cobs.encode(Bytes.hex("99 11 00 99"), 1, 2, into, 1)).isEqualTo(3);
        assertThat(Bytes.spaced(into)).isEqualTo("AA 02 11 01 AA AA");
        assertThatThrownBy(() -> Cobs.encode(new byte[4], 0, 4, new byte[4], 0))
                .isInstanceOf(IndexOutOfBoundsException.class);
        assertThatThrownBy(() -> Cobs.decode(new byte[4], 2, 3, new byte[4], 0))
                .isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Property
    void bytes_come_back_and_their_stuffing_has_no_zero_and_no_more_than_it_may(@ForAll("packets") byte[] plain) {
        byte[] stuffed = encode(plain);
        assertThat(stuffed).doesNotContain(0);
        assertThat(stuffed.length).isBetween(plain.length + 1, Cobs.longestEncoded(plain.length));
        assertThat(decode(stuffed)).isEqualTo(plain);
        int inPlace = Cobs.decode(stuffed, 0, stuffed.length, stuffed, 0);
        assertThat(Arrays.copyOf(stuffed, inPlace)).isEqualTo(plain);
    }

    @Property
    void any_bytes_at_all_decode_to_fewer_or_are_refused(@ForAll("packets") byte[] any) {
        assertThat(Cobs.decode(any, 0, any.length, new byte[any.length + 1], 0))
                .isGreaterThanOrEqualTo(Cobs.NOT_DECODABLE)
                .isLessThan(Math.max(1, any.length));
    }

    /** Long enough for several full blocks, with zeros common, rare or absent. */
    @Provide
    Arbitrary<byte[]> packets() {
        Arbitrary<Byte> whole = Arbitraries.bytes();
        Arbitrary<Byte> notZero = whole.filter(b -> b != 0);
        Arbitrary<Byte> rarelyZero =
                Arbitraries.frequencyOf(Tuple.of(1, Arbitraries.just((byte) 0)), Tuple.of(250, notZero));
        return Arbitraries.oneOf(packetOf(whole), packetOf(notZero), packetOf(rarelyZero));
    }

    private static Arbitrary<byte[]> packetOf(Arbitrary<Byte> bytes) {
        return bytes.array(byte[].class).ofMaxSize(1100);
    }

    private static byte[] encode(byte[] plain) {
        byte[] stuffed = new byte[Cobs.longestEncoded(plain.length)];
        return Arrays.copyOf(stuffed, Cobs.encode(plain, 0, plain.length, stuffed, 0));
    }

    private static byte[] decode(byte[] stuffed) {
        byte[] plain = new byte[stuffed.length];
        return Arrays.copyOf(plain, Cobs.decode(stuffed, 0, stuffed.length, plain, 0));
    }
}
