package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.wire.RecordingSink.Delivered;

/** What holds for every message and every byte stream. */
class FrameStreamTest {
    private static final int MESSAGES_MOST = 6;

    /** One way to damage a stream; place and amount are taken modulo what the stream has. */
    sealed interface Damage {
        byte[] to(byte[] stream);

        record FlipBit(int place) implements Damage {
            @Override
            public byte[] to(byte[] stream) {
                byte[] damaged = stream.clone();
                int bit = place % (stream.length * 8);
                damaged[bit / 8] ^= (byte) (1 << bit % 8);
                return damaged;
            }
        }

        record Cut(int place, int amount) implements Damage {
            @Override
            public byte[] to(byte[] stream) {
                int begin = place % stream.length;
                int end = Math.min(stream.length - 1, begin + amount);
                return Bytes.join(slice(stream, 0, begin), slice(stream, Math.max(begin, end), stream.length));
            }
        }

        record Insert(int place, byte[] bytes) implements Damage {
            @Override
            public byte[] to(byte[] stream) {
                int at = place % stream.length;
                return Bytes.join(slice(stream, 0, at), bytes, slice(stream, at, stream.length));
            }
        }

        private static byte[] slice(byte[] stream, int begin, int end) {
            byte[] part = new byte[end - begin];
            System.arraycopy(stream, begin, part, 0, part.length);
            return part;
        }
    }

    @Provide
    Arbitrary<Message> messages() {
        return AnyMessage.messages();
    }

    @Provide
    Arbitrary<Damage> damages() {
        Arbitrary<Integer> place = Arbitraries.integers().between(0, 1_000_000);
        return Arbitraries.oneOf(
                place.map(Damage.FlipBit::new),
                Combinators.combine(place, Arbitraries.integers().between(1, 300))
                        .as(Damage.Cut::new),
                Combinators.combine(place, garbage()).as(Damage.Insert::new));
    }

    @Provide
    Arbitrary<byte[]> garbage() {
        return Arbitraries.oneOf(
                Arbitraries.bytes().array(byte[].class).ofMaxSize(1500),
                Arbitraries.bytes()
                        .between((byte) 0, (byte) 3)
                        .array(byte[].class)
                        .ofMaxSize(200));
    }

    @Property
    void every_message_comes_back_from_its_frame(
            @ForAll("messages") Message message, @ForAll @IntRange(max = 0xFFFF) int sequence) {
        byte[] wire = FrameEncoder.encode(message, sequence);
        assertThat(wire[wire.length - 1]).isZero();
        assertThat(feed(wire, wire.length).delivered).containsExactly(new Delivered(sequence, message));
    }

    @Property
    void messages_come_back_in_order_however_the_stream_is_cut_into_reads(
            @ForAll @Size(min = 1, max = MESSAGES_MOST) List<@From("messages") Message> messages,
            @ForAll @IntRange(min = 1, max = 400) int piece) {
        RecordingSink sink = feed(stream(messages), piece);
        assertThat(sink.delivered).isEqualTo(numbered(messages));
        assertThat(sink.rejections).isEmpty();
    }

    @Property
    void a_damaged_stream_yields_nothing_that_was_not_sent_intact(
            @ForAll @Size(min = 1, max = MESSAGES_MOST) List<@From("messages") Message> messages,
            @ForAll @Size(min = 1, max = 4) List<@From("damages") Damage> damages,
            @ForAll @IntRange(min = 1, max = 400) int piece) {
        byte[] stream = stream(messages);
        for (Damage damage : damages) {
            stream = damage.to(stream);
        }
        List<Delivered> sent = new ArrayList<>(numbered(messages));
        for (Delivered delivered : feed(stream, piece).delivered) {
            int at = sent.indexOf(delivered);
            assertThat(at).as("%s was not sent, or not now", delivered).isNotNegative();
            sent.subList(0, at + 1).clear();
        }
    }

    @Property
    void garbage_yields_nothing_throws_nothing_and_is_all_counted(
            @ForAll("garbage") byte[] garbage, @ForAll @IntRange(min = 1, max = 400) int piece) {
        RecordingSink sink = new RecordingSink();
        FrameDecoder decoder = new FrameDecoder(sink);
        feed(decoder, garbage, piece);
        decoder.giveUpPartialFrame();
        assertThat(sink.delivered).isEmpty();
        assertThat(decoder.framesBad()).isEqualTo(sink.rejections.size());
        long notZero = 0;
        for (byte b : garbage) {
            notZero += b == 0 ? 0 : 1;
        }
        assertThat(decoder.bytesSkipped()).isEqualTo(notZero);
    }

    /** Garbage that happens not to end takes one frame with it, never two. */
    @Property
    void after_any_garbage_the_second_frame_is_understood_and_the_first_too_after_a_zero(
            @ForAll("garbage") byte[] garbage, @ForAll("messages") Message message) {
        byte[] first = FrameEncoder.encode(new HostAlive(1, 2), 0);
        byte[] second = FrameEncoder.encode(message, 1);
        byte[] unended = Bytes.join(garbage, first, second);
        assertThat(feed(unended, unended.length).delivered).endsWith(new Delivered(1, message));
        byte[] ended = Bytes.join(garbage, new byte[1], first, second);
        assertThat(feed(ended, ended.length).delivered)
                .containsExactly(new Delivered(0, new HostAlive(1, 2)), new Delivered(1, message));
    }

    private static byte[] stream(List<Message> messages) {
        FrameEncoder encoder = new FrameEncoder();
        return Bytes.join(messages.stream().map(encoder::encode).toArray(byte[][]::new));
    }

    private static List<Delivered> numbered(List<Message> messages) {
        List<Delivered> numbered = new ArrayList<>();
        for (Message message : messages) {
            numbered.add(new Delivered(numbered.size(), message));
        }
        return numbered;
    }

    private static RecordingSink feed(byte[] stream, int piece) {
        RecordingSink sink = new RecordingSink();
        feed(new FrameDecoder(sink), stream, piece);
        return sink;
    }

    private static void feed(FrameDecoder decoder, byte[] stream, int piece) {
        for (int at = 0; at < stream.length; at += piece) {
            decoder.accept(stream, at, Math.min(piece, stream.length - at));
        }
    }
}
