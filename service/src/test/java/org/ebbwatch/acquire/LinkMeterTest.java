package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.rig.wire.Rejection;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;

class LinkMeterTest {
    private final LinkMeter meter = new LinkMeter();

    private void scan(long eventMillis, double arrivedMillis) {
        var host = new HostTime("host", Math.round(arrivedMillis * 1e6), 0, WallQuality.KNOWN);
        meter.scan(new LastSeen(eventMillis, 1, eventMillis, eventMillis / 1_000, host));
    }

    private LinkQuality quality() {
        return meter.quality(new FrameDecoder(new Deaf()), new SessionCounts(0, 0, 0, 0, 0, 0, 0, 0), 0);
    }

    @Test
    void scans_that_come_when_the_board_says_have_no_jitter() {
        for (int i = 0; i < 20; i++) {
            scan(1_000L * i, 1_000.0 * i + 7);
        }
        assertThat(quality().jitterMillis()).isZero();
    }

    /** RFC 3550, 6.4.1: J = J + (|D| - J) / 16. */
    @Test
    void jitter_follows_the_standards_recurrence() {
        scan(0, 0);
        scan(1_000, 1_016);
        assertThat(quality().jitterMillis())
                .as("the first deviation stands for itself")
                .isEqualTo(16);
        scan(2_000, 2_016);
        assertThat(quality().jitterMillis()).isEqualTo(15);
        scan(3_000, 3_000);
        assertThat(quality().jitterMillis()).isCloseTo(15 + 1.0 / 16, within(1e-9));
    }

    @Test
    void what_comes_after_a_gap_says_nothing_of_the_line() {
        scan(0, 0);
        meter.gap();
        scan(60_000, 1_000);
        assertThat(quality().jitterMillis()).isNaN();
    }

    /** RFC 6298, 2.3: SRTT = 7/8 SRTT + 1/8 R. */
    @Test
    void the_round_trip_follows_the_standards_recurrence() {
        assertThat(quality().roundTripMillis()).isNaN();
        meter.roundTrip(8);
        meter.roundTrip(16);
        assertThat(quality().roundTripMillis()).isEqualTo(9);
    }

    @Test
    void what_one_connection_counted_is_not_forgotten_with_the_next() {
        var decoder = new FrameDecoder(new Deaf());
        byte[] frame = FrameEncoder.encode(Frames.identity("EB-1", 1, 1, 1), 0);
        decoder.accept(frame, 0, frame.length);
        int letter = new String(frame, StandardCharsets.ISO_8859_1).indexOf("EB-1");
        frame[letter] = 'F';
        decoder.accept(frame, 0, frame.length);
        meter.add(decoder);
        LinkQuality quality = meter.quality(decoder, new SessionCounts(5, 1, 0, 0, 0, 0, 0, 2), 3);
        assertThat(quality.frames()).isEqualTo(2);
        assertThat(quality.crcErrors()).isEqualTo(1);
        assertThat(quality.scans()).isEqualTo(5);
        assertThat(quality.gaps()).isEqualTo(3);
        assertThat(quality.silences()).isEqualTo(2);
    }

    private final class Deaf implements FrameSink {
        @Override
        public void readings(ReadingsView view) {}

        @Override
        public void message(int sequence, Message message) {}

        @Override
        public void rejected(Rejection why) {
            meter.rejected(why);
        }
    }
}
