package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.RecordingSink.Delivered;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrameDecoderTest {
    private final RecordingSink sink = new RecordingSink();
    private final FrameDecoder decoder = new FrameDecoder(sink);

    private void accept(byte[]... parts) {
        byte[] bytes = Bytes.join(parts);
        decoder.accept(bytes, 0, bytes.length);
    }

    private static byte[] who(int sequence) {
        return FrameEncoder.encode(new Who(), sequence);
    }

    @Test
    void delimiters_between_frames_are_nothing() {
        accept(new byte[5], who(1), new byte[3], who(2), new byte[1]);
        assertThat(sink.delivered).containsExactly(new Delivered(1, new Who()), new Delivered(2, new Who()));
        assertThat(decoder.framesBad()).isZero();
        assertThat(decoder.isWithinFrame()).isFalse();
    }

    @Test
    void only_the_range_asked_for_is_read() {
        byte[] bytes = Bytes.join(new byte[] {9, 9}, who(1), new byte[] {9});
        decoder.accept(bytes, 2, bytes.length - 3);
        assertThat(sink.delivered).hasSize(1);
        assertThat(decoder.isWithinFrame()).isFalse();
        assertThatThrownBy(() -> decoder.accept(bytes, 2, bytes.length)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Nested
    class A_frame_that_cannot_be_used {
        @Test
        void of_another_version_is_refused_by_its_version() {
            accept(Bytes.framed(Bytes.hex("02 41 00 00")), who(1));
            assertThat(sink.rejections).containsExactly(new Rejection.UnknownVersion(2));
            assertThat(sink.delivered).containsExactly(new Delivered(1, new Who()));
        }

        @Test
        void of_another_version_is_noise_when_it_is_damaged() {
            byte[] frame = Bytes.framed(Bytes.hex("02 41 00 01"));
            frame[1] ^= 8;
            accept(frame);
            assertThat(sink.rejections).containsExactly(new Rejection.BadCrc());
        }

        @ParameterizedTest
        @ValueSource(strings = {"00", "06", "3F", "40", "49", "7F", "80", "FF"})
        void of_an_unknown_kind_is_skipped_and_counted(String kind) {
            accept(Bytes.framed(Bytes.hex("01 " + kind + " 05 00 AA BB")), who(6));
            assertThat(sink.unknownKinds).containsExactly(Integer.parseInt(kind, 16));
            assertThat(sink.rejections).isEmpty();
            assertThat(decoder.kindsSkipped()).isEqualTo(1);
            assertThat(decoder.framesGood()).isEqualTo(1);
            assertThat(decoder.sequenceGaps()).isZero();
        }

        @Test
        void and_is_shorter_than_header_and_checksum_is_too_short() {
            accept(Bytes.hex("04 01 02 03 00"), Bytes.hex("08 01 02 03 04 05 06 07 00"));
            assertThat(sink.rejections).containsExactly(new Rejection.TooShort(), new Rejection.TooShort());
            assertThat(decoder.bytesSkipped()).isEqualTo(12);
        }

        @Test
        void and_is_not_stuffed_is_told_from_a_bad_checksum() {
            accept(Bytes.hex("09 01 02 00"), Bytes.hex("09 01 02 03 04 05 06 07 08 00"));
            assertThat(sink.rejections).containsExactly(new Rejection.BadCobs(), new Rejection.BadCrc());
        }
    }

    @Nested
    class A_frame_of_some_length {
        private byte[] readingsPaddedTo(int payload) {
            byte[] frame = new byte[4 + payload];
            byte[] head = Bytes.hex("01 02 07 00 01 00 00 00 02 00 00 00 03 00 00 00 00 00 00 01 21 05 00 00 00 06");
            System.arraycopy(head, 0, frame, 0, head.length);
            return Bytes.framed(frame);
        }

        @Test
        void may_have_fields_that_this_version_does_not_know_behind_its_own() {
            accept(Bytes.framed(Bytes.hex("01 43 07 00 02 01 77 77 77")));
            assertThat(sink.delivered).containsExactly(new Delivered(7, new SetLoad(2, true)));
        }

        @Test
        void is_taken_up_to_the_longest_payload() {
            accept(readingsPaddedTo(1024));
            assertThat(decoder.isWithinFrame()).isFalse();
            accept(new byte[1]);
            assertThat(decoder.framesBad()).isZero();
            assertThat(sink.delivered)
                    .containsExactly(
                            new Delivered(7, new Readings(1, 2, 3, 0, false, 0, List.of(new Reading(0x21, 5, 6, 0)))));
        }

        @Test
        void is_too_long_with_one_byte_more() {
            accept(readingsPaddedTo(1025), who(1));
            assertThat(sink.rejections).containsExactly(new Rejection.TooLong());
            assertThat(sink.delivered).containsExactly(new Delivered(1, new Who()));
        }

        /** Ten million bytes go into a decoder that has no more than its one buffer. */
        @Test
        void is_not_kept_beyond_the_longest_however_long_it_goes_on() {
            byte[] endless = Bytes.hex("11 ".repeat(10_000));
            for (int i = 0; i < 1_000; i++) {
                decoder.accept(endless, 0, endless.length);
            }
            assertThat(decoder.isWithinFrame()).isTrue();
            assertThat(sink.rejections).isEmpty();
            accept(new byte[1], who(1));
            assertThat(sink.rejections).containsExactly(new Rejection.TooLong());
            assertThat(decoder.bytesSkipped()).isEqualTo(10_000_000);
            assertThat(sink.delivered).containsExactly(new Delivered(1, new Who()));
        }
    }

    @Nested
    class A_malformed_payload {
        @ParameterizedTest
        @CsvSource({
            "43, 02",
            "43, 02 02",
            "43, FF 01",
            "44, FF",
            "45, 01",
            "46, ''",
            "47, 10 27 00",
            "42, 01 00 00 00 02 00 00",
            "03, 01 00 02 03 00 00 00 00 00 00 00 00",
            "04, 01 00",
            "05, 01 00 43 00 0A",
            "05, 01 00 43 00 00",
            "01, 01 00 00 00 01",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 00 00",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 00 00 00",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 00 00 01 21 05 00 00 00 06 00 00",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 01 00 01 21 05 00 00 00 06 00 00 00",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 02 00 01 21 05 00 00 00 06 00 00 00 00 00 00 00",
            "02, 01 00 00 00 02 00 00 00 03 00 00 00 00 00 40 01 21 05 00 00 00 06 00 00 00",
            "02, 01 00 00 00 02 00 00 00 00 00 00 00 00 00 00 01 21 05 00 00 00 06 00 00 00"
        })
        void is_refused_with_the_sequence_and_kind_that_an_answer_needs(String kind, String payload) {
            accept(Bytes.framed(Bytes.hex("01 " + kind + " 2C 01 " + payload)), who(301));
            assertThat(sink.rejections).singleElement().isInstanceOfSatisfying(Rejection.Malformed.class, malformed -> {
                assertThat(malformed.sequence()).isEqualTo(300);
                assertThat(malformed.kind()).isEqualTo(Integer.parseInt(kind, 16));
                assertThat(malformed.why()).isNotBlank();
            });
            assertThat(sink.delivered).containsExactly(new Delivered(301, new Who()));
        }

        @Test
        void is_not_one_that_a_board_must_be_able_to_refuse() {
            accept(Bytes.framed(Bytes.hex("01 47 00 00 09 00 00 00")));
            assertThat(sink.delivered).containsExactly(new Delivered(0, new SetInterval(9)));
        }
    }

    @Test
    void a_reserved_bit_of_the_state_is_ignored() {
        accept(Bytes.framed(
                Bytes.hex("01 02 00 00 01 00 00 00 02 00 00 00 03 00 00 00 00 00 00 01 A1 05 00 00 00 06 00 00 00")));
        assertThat(((Readings) sink.delivered.get(0).message()).readings()).containsExactly(new Reading(0x21, 5, 6, 0));
    }

    @Nested
    class A_partial_frame {
        @Test
        void stays_open_until_its_end_comes() {
            byte[] frame = who(1);
            decoder.accept(frame, 0, 5);
            assertThat(decoder.isWithinFrame()).isTrue();
            decoder.accept(frame, 5, frame.length - 5);
            assertThat(decoder.isWithinFrame()).isFalse();
            assertThat(sink.delivered).hasSize(1);
        }

        @Test
        void is_given_up_at_the_caller_s_deadline_and_counted() {
            decoder.accept(who(1), 0, 5);
            decoder.giveUpPartialFrame();
            decoder.giveUpPartialFrame();
            assertThat(sink.rejections).containsExactly(new Rejection.CutShort());
            assertThat(decoder.bytesSkipped()).isEqualTo(5);
            assertThat(decoder.isWithinFrame()).isFalse();
            accept(who(2));
            assertThat(sink.delivered).containsExactly(new Delivered(2, new Who()));
        }
    }

    @Nested
    class Sequence_numbers {
        @Test
        void are_followed_over_their_wrap() {
            accept(who(65_534), who(65_535), who(0), who(1));
            assertThat(decoder.sequenceGaps()).isZero();
            assertThat(decoder.framesGood()).isEqualTo(4);
        }

        @Test
        void that_jump_either_way_are_gaps_and_that_stay_are_repeats() {
            accept(who(5), who(7), who(7), who(6), who(7));
            assertThat(decoder.sequenceGaps()).isEqualTo(2);
            assertThat(decoder.sequenceRepeats()).isEqualTo(1);
            assertThat(sink.delivered).hasSize(5);
        }

        @Test
        void are_counted_up_from_0_by_an_encoder_and_wrap() {
            FrameEncoder encoder = new FrameEncoder();
            for (int i = 0; i < 65_537; i++) {
                accept(encoder.encode(new Who()));
            }
            assertThat(encoder.lastSequence()).isZero();
            assertThat(sink.delivered.get(0).sequence()).isZero();
            assertThat(sink.delivered.get(65_535).sequence()).isEqualTo(65_535);
            assertThat(decoder.sequenceGaps()).isZero();
        }
    }

    @Test
    void a_sink_that_throws_leaves_the_decoder_usable() {
        FrameDecoder fragile = new FrameDecoder(new FrameSink() {
            @Override
            public void readings(ReadingsView view) {}

            @Override
            public void message(int sequence, Message message) {
                if (message instanceof Who) {
                    throw new IllegalStateException("no");
                }
                sink.message(sequence, message);
            }
        });
        byte[] bad = who(0);
        assertThatThrownBy(() -> fragile.accept(bad, 0, bad.length)).hasMessage("no");
        byte[] good = FrameEncoder.encode(new HostAlive(1, 2), 1);
        fragile.accept(good, 0, good.length);
        assertThat(sink.delivered).containsExactly(new Delivered(1, new HostAlive(1, 2)));
    }

    @Test
    void a_view_refuses_a_channel_its_frame_does_not_have() {
        byte[] frame = FrameEncoder.encode(new Readings(1, 2, 3, 0, false, 0, List.of(new Reading(1, 2, 3, 0))), 0);
        FrameDecoder reading = new FrameDecoder(new FrameSink() {
            @Override
            public void readings(ReadingsView view) {
                assertThat(view.count()).isEqualTo(1);
                assertThat(view.amperes(0)).isZero();
                assertThatThrownBy(() -> view.volts(1)).isInstanceOf(IndexOutOfBoundsException.class);
                assertThatThrownBy(() -> view.state(-1)).isInstanceOf(IndexOutOfBoundsException.class);
                sink.message(view.sequence(), new Buzzer(1));
            }

            @Override
            public void message(int sequence, Message message) {}
        });
        reading.accept(frame, 0, frame.length);
        assertThat(sink.delivered).hasSize(1);
    }
}
