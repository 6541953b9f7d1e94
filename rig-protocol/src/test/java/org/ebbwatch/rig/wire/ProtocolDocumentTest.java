package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.rig.message.Ability.AMPERES;
import static org.ebbwatch.rig.message.Ability.BLINK;
import static org.ebbwatch.rig.message.Ability.CELSIUS;
import static org.ebbwatch.rig.message.Ability.VOLTS;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.ProtocolDocument.Row;
import org.ebbwatch.rig.wire.ProtocolDocument.WorkedFrame;
import org.ebbwatch.rig.wire.RecordingSink.Delivered;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The worked frames and tables of the protocol document are this module's golden vectors: document and code agree. */
class ProtocolDocumentTest {
    private static final Identity SMALL_BOARD = new Identity(
            17,
            ClockKind.CRYSTAL,
            false,
            true,
            false,
            1,
            1_000,
            10_000,
            new Scales(125_000, 100_000, 10_000),
            new Converter(-1_600, 40_000, 2_000_000, 1_500, 500_000),
            2,
            "EB-0042",
            "1.0.3",
            List.of(
                    new ChannelIdentity(ChannelRole.CELL, EnumSet.of(VOLTS, CELSIUS, AMPERES, BLINK), 4_700),
                    new ChannelIdentity(ChannelRole.CELL, EnumSet.allOf(Ability.class), 10_000),
                    new ChannelIdentity(ChannelRole.AMBIENT, Set.of(CELSIUS), 0)));

    private static final Readings WITH_AMPERES = new Readings(
            17,
            86_400_250L,
            86_400,
            1,
            true,
            0,
            List.of(
                    new Reading(0x0F, -1_600, -512, -3),
                    new Reading(0x27, 29_760, 3_125, 3_720),
                    new Reading(0x02, 0, 2_190, 0)));

    private static final Readings SECOND_PART =
            new Readings(17, 4_294_967_295L, 4_294_968, 0, false, 2, List.of(new Reading(0x50, 0, 0, 0)));

    private static final Map<String, Delivered> MEANT = Map.ofEntries(
            Map.entry("IDENTITY of a small board", new Delivered(0, SMALL_BOARD)),
            Map.entry("READINGS with amperes", new Delivered(1, WITH_AMPERES)),
            Map.entry("READINGS, the second part of a scan, without amperes", new Delivered(65_535, SECOND_PART)),
            Map.entry("LEAD_CHECKED", new Delivered(300, new LeadChecked(12, 1, LeadOutcome.ATTACHED, 161, 162))),
            Map.entry("DONE", new Delivered(301, new Done(11, 0x43))),
            Map.entry("REFUSED", new Delivered(302, new Refused(13, 0x43, 0, RefusalReason.NO_SUCH_ABILITY))),
            Map.entry("WHO", new Delivered(0, new Who())),
            Map.entry("HOST_ALIVE", new Delivered(10, new HostAlive(17, 86_400))),
            Map.entry("SET_LOAD", new Delivered(11, new SetLoad(1, true))),
            Map.entry("CHECK_LEAD", new Delivered(12, new CheckLead(1))),
            Map.entry("BLINK", new Delivered(14, new Blink(1, 30))),
            Map.entry("BUZZER", new Delivered(15, new Buzzer(0))),
            Map.entry("SET_INTERVAL", new Delivered(16, new SetInterval(60_000))),
            Map.entry("OPEN_ALL_LOADS", new Delivered(65_535, new OpenAllLoads())));

    static List<WorkedFrame> frames() {
        return ProtocolDocument.frames();
    }

    static List<Row> checksums() {
        return ProtocolDocument.table("### 1.4 CRC-32C");
    }

    static List<Row> stuffings() {
        return ProtocolDocument.table("### 1.5 COBS");
    }

    @Test
    void every_kind_of_message_is_worked_out() {
        assertThat(frames().stream().map(WorkedFrame::title).toList())
                .containsExactlyInAnyOrderElementsOf(MEANT.keySet());
        assertThat(MEANT.values().stream().map(meant -> meant.message().kind()).collect(Collectors.toSet()))
                .containsExactlyInAnyOrder(Kind.values());
    }

    @ParameterizedTest
    @MethodSource("frames")
    void a_worked_frame_is_what_the_encoder_makes(WorkedFrame worked) {
        Delivered meant = MEANT.get(worked.title());
        assertThat(Bytes.spaced(FrameEncoder.encode(meant.message(), meant.sequence())))
                .isEqualTo(Bytes.spaced(worked.wire()));
    }

    @ParameterizedTest
    @MethodSource("frames")
    void a_worked_frame_is_what_the_decoder_reads_in_pieces_of_every_size(WorkedFrame worked) {
        for (int size = 1; size <= worked.wire().length; size++) {
            RecordingSink sink = new RecordingSink();
            FrameDecoder decoder = new FrameDecoder(sink);
            for (int at = 0; at < worked.wire().length; at += size) {
                decoder.accept(worked.wire(), at, Math.min(size, worked.wire().length - at));
            }
            assertThat(sink.delivered).as("pieces of %d", size).containsExactly(MEANT.get(worked.title()));
            assertThat(decoder.framesGood()).isEqualTo(1);
            assertThat(decoder.framesBad()).isZero();
            assertThat(decoder.bytesSkipped()).isZero();
        }
    }

    @ParameterizedTest
    @MethodSource("frames")
    void a_worked_frame_ends_in_the_checksum_of_its_own_bytes_and_unstuffs_to_them(WorkedFrame worked) {
        byte[] frame = worked.frame();
        byte[] checked = Arrays.copyOf(frame, frame.length - 4);
        assertThat(LittleEndian.i32(frame, frame.length - 4)).isEqualTo(BitwiseCrc32c.of(checked));
        byte[] unstuffed = new byte[worked.wire().length];
        int length = Cobs.decode(worked.wire(), 0, worked.wire().length - 1, unstuffed, 0);
        assertThat(Arrays.copyOf(unstuffed, length)).isEqualTo(frame);
    }

    /** Every bit of every worked frame, its delimiter too: the message is lost, the one after next always understood. */
    @ParameterizedTest
    @MethodSource("frames")
    void a_worked_frame_with_any_one_bit_wrong_is_dropped_and_the_decoder_in_step_again(WorkedFrame worked) {
        byte[] next = FrameEncoder.encode(new HostAlive(4, 5), 1);
        byte[] afterNext = FrameEncoder.encode(new SetInterval(250), 2);
        for (int bit = 0; bit < worked.wire().length * 8; bit++) {
            byte[] damaged = worked.wire().clone();
            damaged[bit / 8] ^= (byte) (1 << bit % 8);
            byte[] stream = Bytes.join(damaged, next, afterNext);
            RecordingSink sink = new RecordingSink();
            FrameDecoder decoder = new FrameDecoder(sink);
            decoder.accept(stream, 0, stream.length);
            Message last = sink.delivered.get(sink.delivered.size() - 1).message();
            assertThat(last).as("bit %d", bit).isEqualTo(new SetInterval(250));
            boolean delimiterHit = bit / 8 == worked.wire().length - 1;
            assertThat(sink.delivered).as("bit %d", bit).hasSize(delimiterHit ? 1 : 2);
            assertThat(decoder.framesBad()).as("bit %d", bit).isGreaterThanOrEqualTo(1);
        }
    }

    @ParameterizedTest
    @MethodSource("checksums")
    void the_checksums_of_the_document_are_those_of_its_bytes(Row row) {
        byte[] bytes =
                switch (row.left()) {
                    case "ASCII 123456789" -> "123456789".getBytes(StandardCharsets.US_ASCII);
                    case "32 bytes 00" -> new byte[32];
                    case "32 bytes FF" -> Bytes.hex("FF ".repeat(32));
                    case "none" -> new byte[0];
                    default -> Bytes.hex(row.left());
                };
        assertThat(String.format("%08X", BitwiseCrc32c.of(bytes))).isEqualTo(row.right());
    }

    @ParameterizedTest
    @MethodSource("stuffings")
    void the_stuffings_of_the_document_are_those_of_its_bytes(Row row) {
        byte[] bytes = row.left().equals("none") ? new byte[0] : Bytes.hex(row.left());
        byte[] encoded = new byte[Cobs.longestEncoded(bytes.length)];
        int length = Cobs.encode(bytes, 0, bytes.length, encoded, 0);
        assertThat(Bytes.spaced(Arrays.copyOf(encoded, length))).isEqualTo(Bytes.spaced(Bytes.hex(row.right())));
    }
}
