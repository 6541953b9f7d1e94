package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class OutboxTest {
    private final Outbox outbox = new Outbox(Randomness.of(5, "wire"));

    private static byte[] frame(int size) {
        byte[] frame = new byte[size];
        for (int i = 0; i < size; i++) {
            frame[i] = (byte) (i * 7 + 1);
        }
        return frame;
    }

    @Test
    void bytes_come_out_in_order_in_pieces_of_any_size() {
        byte[] sent = frame(9_000);
        assertThat(outbox.add(sent, 5_000)).isTrue();
        byte[] got = new byte[9_000];
        byte[] piece = new byte[37];
        int at = 0;
        for (int taken = outbox.take(piece); taken > 0; taken = outbox.take(piece)) {
            System.arraycopy(piece, 0, got, at, taken);
            at += taken;
            if (at == 37 * 10) {
                outbox.add(Arrays.copyOfRange(sent, 5_000, 9_000), 4_000);
            }
        }
        assertThat(at).isEqualTo(9_000);
        assertThat(got).isEqualTo(sent);
    }

    @Test
    void what_nobody_fetches_is_kept_up_to_a_bound() {
        int added = 0;
        while (outbox.add(frame(1_000), 1_000)) {
            added++;
        }
        assertThat(added).isEqualTo(Outbox.MOST / 1_000);
        assertThat(outbox.takeAll()).hasSize(added * 1_000);
        assertThat(outbox.add(frame(10), 10)).isTrue();
    }

    @Test
    void every_byte_is_dropped_or_corrupted_at_a_share_of_1() {
        outbox.setDropShare(1);
        assertThat(outbox.add(frame(50), 50)).isFalse();
        assertThat(outbox.takeAll()).isEmpty();

        outbox.setDropShare(0);
        outbox.setCorruptShare(1);
        byte[] sent = frame(50);
        outbox.add(sent, 50);
        byte[] harmed = outbox.takeAll();
        assertThat(harmed).hasSize(50);
        for (int i = 0; i < 50; i++) {
            assertThat(harmed[i]).isNotEqualTo(sent[i]);
        }
    }

    @Test
    void a_frame_behind_a_lost_delimiter_is_lost_too() {
        outbox.setDropShare(1);
        outbox.add(frame(1), 1);
        outbox.setDropShare(0);

        assertThat(outbox.add(frame(5), 5)).isFalse();
        assertThat(outbox.add(frame(5), 5)).isTrue();
    }
}
