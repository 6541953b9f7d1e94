package org.ebbwatch.trace.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class SegmentCodecTest {

    private static final Sha256 IDENTITY = Sha256.of("identity");
    private static final Sha256 PREVIOUS = Sha256.of("previous");

    @Property(tries = 400)
    void every_sequence_comes_back_as_it_was(@ForAll("segments") Segment segment) {
        Segment back = SegmentCodec.decode(encode(segment));

        assertSame(back, segment);
    }

    @Property(tries = 60)
    void any_flipped_bit_is_found(@ForAll("segments") Segment segment) {
        byte[] bytes = encode(segment);
        for (int bit = 0; bit < 8 * bytes.length; bit++) {
            byte[] damaged = bytes.clone();
            damaged[bit / 8] ^= (byte) (1 << bit % 8);
            assertThatThrownBy(() -> SegmentCodec.decode(damaged)).isInstanceOf(DamagedSegmentException.class);
        }
    }

    @Property(tries = 60)
    void any_cut_is_found(@ForAll("segments") Segment segment) {
        byte[] bytes = encode(segment);
        for (int length = 0; length < bytes.length; length++) {
            byte[] cut = Arrays.copyOf(bytes, length);
            assertThatThrownBy(() -> SegmentCodec.decode(cut)).isInstanceOf(DamagedSegmentException.class);
        }
    }

    @Property(tries = 3000)
    void bytes_that_were_tampered_with_and_given_a_fitting_checksum_are_read_or_refused(
            @ForAll("segments") Segment segment,
            @ForAll Random random,
            @ForAll @IntRange(min = 1, max = 40) int changes) {
        byte[] bytes = encode(segment);
        byte[] forged = Arrays.copyOf(bytes, Math.max(5, bytes.length - random.nextInt(20)));
        for (int i = 0; i < changes; i++) {
            forged[random.nextInt(forged.length)] = (byte) random.nextInt();
        }
        SegmentCodec.seal(forged);

        try {
            Segment read = SegmentCodec.decode(forged);
            assertThat(read.samples().count()).isBetween(1, Samples.MOST);
        } catch (DamagedSegmentException refused) {
            assertThat(refused).hasMessageMatching("(?s).*(makes no sense|do not end|written by).*");
        }
    }

    @Test
    void not_a_number_patterns_keep_every_bit() {
        int[] patterns = {0x7FC00000, 0x7F800001, 0xFFFFFFFF, 0x7FABCDEF, 0x80000000, 0, 0x7F7FFFFF, 0xFF800000};
        ValueKinds floats = new ValueKinds(ValueKind.FLOAT32, ValueKind.FLOAT32, ValueKind.FLOAT32);
        int count = patterns.length;
        Samples samples = new Samples(
                floats, count, new long[count], new long[count], new byte[count], patterns, patterns, patterns);
        SegmentKey key = new SegmentKey("B", 0, 0, 0, 0);

        Segment back = SegmentCodec.decode(SegmentCodec.encode(key, IDENTITY, PREVIOUS, samples));

        assertThat(back.samples().volts()).containsExactly(patterns);
        assertThat(back.samples().celsius()).containsExactly(patterns);
        assertThat(back.samples().amperes()).containsExactly(patterns);
    }

    @Test
    void the_same_samples_always_give_the_same_bytes() {
        // The format is kept for ever: this digest may only change together with SegmentCodec.VERSION.
        int count = 500;
        Samples samples = Samples.unfilled(ValueKinds.COUNTS, count);
        for (int i = 0; i < count; i++) {
            samples.scans()[i] = 7L + i + (i > 300 ? 40 : 0);
            samples.eventMillis()[i] = 1_000_000L + 1000L * i + i % 7 / 6 + (i > 300 ? 40_123 : 0);
            samples.states()[i] = (byte) (i < 200 ? 3 : 35);
            samples.volts()[i] = 42_000 - 3 * i + i * i % 5;
            samples.celsius()[i] = 1250 + i * 31 % 11 / 5;
            samples.amperes()[i] = i < 200 ? 0 : 8000 + i * 17 % 23;
        }
        SegmentKey key = new SegmentKey("RIG-0001", 5, 9, samples.scans()[0], samples.eventMillis()[0]);

        byte[] bytes = SegmentCodec.encode(key, IDENTITY, PREVIOUS, samples);

        assertThat(Sha256.of(bytes)).hasToString("25d1115d697dfd7fea4de1305b2c66aeda375d18c89c96fe48da8467044c5de4");
    }

    @Test
    void a_segment_of_another_codec_version_is_refused_by_name() {
        Samples one = Samples.unfilled(ValueKinds.COUNTS, 1);
        byte[] bytes = SegmentCodec.encode(new SegmentKey("B", 0, 0, 0, 0), IDENTITY, PREVIOUS, one);
        bytes[0] = 2;
        SegmentCodec.seal(bytes);

        assertThatThrownBy(() -> SegmentCodec.decode(bytes))
                .isInstanceOf(DamagedSegmentException.class)
                .hasMessage("written by codec version 2, this is version 1");
    }

    @Test
    void a_key_that_does_not_name_the_first_sample_is_refused() {
        Samples one = Samples.unfilled(ValueKinds.COUNTS, 1);
        SegmentKey wrong = new SegmentKey("B", 0, 0, 1, 0);

        assertThatThrownBy(() -> SegmentCodec.encode(wrong, IDENTITY, PREVIOUS, one))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_quiet_channel_of_ten_minutes_costs_less_than_a_twentieth_of_a_byte_per_sample_beside_its_head() {
        Samples quiet = Samples.unfilled(ValueKinds.COUNTS, 600);
        for (int i = 0; i < 600; i++) {
            quiet.scans()[i] = i;
            quiet.eventMillis()[i] = 1000L * i;
            quiet.states()[i] = 3;
            quiet.volts()[i] = 37_000;
            quiet.celsius()[i] = 1250;
        }
        byte[] bytes = SegmentCodec.encode(new SegmentKey("B", 0, 0, 0, 0), IDENTITY, PREVIOUS, quiet);

        assertThat(bytes.length).isLessThan(99 + 600 / 20);
    }

    @Test
    void noise_of_one_count_costs_less_than_a_byte_per_pair_with_times_and_head() {
        Random random = new Random(1);
        Samples noisy = Samples.unfilled(ValueKinds.COUNTS_WITHOUT_AMPERES, 600);
        for (int i = 0; i < 600; i++) {
            noisy.scans()[i] = i;
            noisy.eventMillis()[i] = 1000L * i + random.nextInt(20) / 19;
            noisy.states()[i] = 35;
            noisy.volts()[i] = (int) Math.round(36_000 - 0.4 * i + random.nextGaussian());
            noisy.celsius()[i] = (int) Math.round(1500 + 0.01 * i + random.nextGaussian());
        }
        SegmentKey key = new SegmentKey("RIG-0001", 0, 1, 0, noisy.eventMillis()[0]);

        assertThat(SegmentCodec.encode(key, IDENTITY, PREVIOUS, noisy).length).isLessThan(600);
    }

    private static byte[] encode(Segment segment) {
        return SegmentCodec.encode(segment.key(), segment.identity(), segment.previous(), segment.samples());
    }

    private static void assertSame(Segment back, Segment segment) {
        int count = segment.samples().count();
        assertThat(back.key()).isEqualTo(segment.key());
        assertThat(back.identity()).isEqualTo(segment.identity());
        assertThat(back.previous()).isEqualTo(segment.previous());
        assertThat(back.samples().kinds()).isEqualTo(segment.samples().kinds());
        assertThat(back.samples().count()).isEqualTo(count);
        assertThat(back.samples().scans()).containsExactly(segment.samples().scans());
        assertThat(back.samples().eventMillis())
                .containsExactly(segment.samples().eventMillis());
        assertThat(back.samples().states()).containsExactly(segment.samples().states());
        assertThat(back.samples().volts()).containsExactly(segment.samples().volts());
        assertThat(back.samples().celsius()).containsExactly(segment.samples().celsius());
        assertThat(back.samples().amperes()).containsExactly(segment.samples().amperes());
    }

    @Provide
    Arbitrary<Segment> segments() {
        Arbitrary<ValueKind> present = Arbitraries.of(ValueKind.COUNTS, ValueKind.FLOAT32);
        Arbitrary<ValueKinds> kinds = Combinators.combine(present, present, Arbitraries.of(ValueKind.class))
                .as(ValueKinds::new);
        Arbitrary<Integer> counts = Arbitraries.oneOf(
                Arbitraries.integers().between(1, 40), Arbitraries.integers().between(1, 300));
        return Combinators.combine(
                        kinds,
                        counts,
                        Arbitraries.strings().ascii().ofMinLength(1).ofMaxLength(64),
                        Arbitraries.integers().between(0, 255),
                        Arbitraries.longs(),
                        Arbitraries.longs(),
                        Arbitraries.of(Habit.class))
                .as((kind, count, board, channel, boot, seed, habit) -> {
                    Samples samples = Samples.unfilled(kind, count);
                    Random random = new Random(seed);
                    long[] scans = habit.longs(random, count);
                    long[] times = habit.longs(random, count);
                    System.arraycopy(scans, 0, samples.scans(), 0, count);
                    System.arraycopy(times, 0, samples.eventMillis(), 0, count);
                    habit.fill(random, samples.volts());
                    habit.fill(random, samples.celsius());
                    habit.fill(random, samples.amperes());
                    for (int i = 0; i < count; i++) {
                        samples.states()[i] = (byte) (random.nextInt(4) == 0 ? random.nextInt() : 3);
                    }
                    return new Segment(
                            new SegmentKey(board, channel, boot, scans[0], times[0]), IDENTITY, PREVIOUS, samples);
                });
    }

    /** How a made-up channel behaves. */
    private enum Habit {
        NOISE,
        WALK,
        JUMPS,
        EXTREMES,
        ANYTHING;

        private static final int[] EDGES = {
            Integer.MIN_VALUE, Integer.MIN_VALUE + 1, -1, 0, 1, Integer.MAX_VALUE - 1, Integer.MAX_VALUE, 0x7FC00001
        };

        void fill(Random random, int[] column) {
            int level = random.nextInt();
            for (int i = 0; i < column.length; i++) {
                level = switch (this) {
                    case NOISE -> level;
                    case WALK -> level + random.nextInt(7) - 3;
                    case JUMPS -> random.nextInt(20) == 0 ? random.nextInt(50_000) : level;
                    case EXTREMES -> EDGES[random.nextInt(EDGES.length)];
                    case ANYTHING -> random.nextInt();
                };
                column[i] = this == NOISE ? level + (int) Math.round(random.nextGaussian()) : level;
            }
        }

        long[] longs(Random random, int count) {
            long[] column = new long[count];
            long at = random.nextInt(1_000_000);
            for (int i = 0; i < count; i++) {
                at += switch (this) {
                    case NOISE -> 1000;
                    case WALK -> 999 + random.nextInt(3);
                    case JUMPS -> random.nextInt(20) == 0 ? random.nextInt(10_000_000) : 100;
                    case EXTREMES -> random.nextBoolean() ? Long.MAX_VALUE : Long.MIN_VALUE + 1;
                    case ANYTHING -> random.nextLong();
                };
                column[i] = at;
            }
            return column;
        }
    }
}
