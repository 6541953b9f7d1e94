package org.ebbwatch.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.rig.wire.Rejection;
import org.junit.jupiter.api.Test;

/** The board's answers, by the table of requests in docs/rig-protocol.md. */
class ProfiledBoardTest implements FrameSink {
    private final List<Object> said = new ArrayList<>();
    private final FrameEncoder encoder = new FrameEncoder();
    private final FrameDecoder decoder = new FrameDecoder(this);
    private ProfiledBoard board = new ProfiledBoard(device(true), "D-1");

    @Test
    void who_it_is_is_answered_once_for_each_question_when_the_device_has_shown_itself() {
        ask(new Who());
        ask(new Who());
        assertThat(said).isEmpty();
        scan();
        assertThat(said).hasSize(3).startsWith(identity(), identity()).endsWith("scan 1");
        assertThat(ask(new Who())).containsExactly(identity());
    }

    @Test
    void a_new_connection_has_to_show_itself_again_and_scans_are_numbered_on() {
        scan();
        board.opened();
        assertThat(ask(new Who())).isEmpty();
        assertThat(scan()).containsExactly(identity(), "scan 2");
    }

    @Test
    void a_restart_numbers_scans_anew_and_says_so_unasked() {
        scan();
        said.clear();
        board.restarted();
        assertThat(scan()).containsExactly(identity(), "scan 1");
    }

    @Test
    void loads_become_orders_that_are_answered_when_they_were_carried_out() throws InterruptedException {
        assertThat(ask(new SetLoad(0, true))).isEmpty();
        LoadOrder close = board.awaitOrder(0).orElseThrow();
        assertThat(close).isEqualTo(new LoadOrder(0, Kind.SET_LOAD.code(), 0, true));
        board.done(close);
        assertThat(taken()).containsExactly(new Done(0, Kind.SET_LOAD.code()));
        ask(new OpenAllLoads());
        LoadOrder all = board.awaitOrder(0).orElseThrow();
        assertThat(all.channel()).isEqualTo(LoadOrder.EVERY_CHANNEL);
        assertThat(all.applied()).isFalse();
        board.refuse(all, 0, RefusalReason.FAILED);
        assertThat(taken()).containsExactly(new Refused(1, Kind.OPEN_ALL_LOADS.code(), 0, RefusalReason.FAILED));
        assertThat(board.awaitOrder(0)).isEmpty();
    }

    @Test
    void an_order_of_the_last_connection_is_not_carried_out() throws InterruptedException {
        ask(new SetLoad(0, true));
        board.opened();
        assertThat(board.awaitOrder(0)).isEmpty();
    }

    @Test
    void what_the_device_cannot_do_is_refused_with_its_reason() {
        assertThat(ask(new SetLoad(1, true)))
                .containsExactly(refused(0, Kind.SET_LOAD, 1, RefusalReason.NO_SUCH_ABILITY));
        assertThat(ask(new SetLoad(2, false)))
                .containsExactly(refused(1, Kind.SET_LOAD, 2, RefusalReason.NO_SUCH_CHANNEL));
        assertThat(ask(new CheckLead(0)))
                .containsExactly(refused(2, Kind.CHECK_LEAD, 0, RefusalReason.NO_SUCH_ABILITY));
        assertThat(ask(new Blink(9, 1))).containsExactly(refused(3, Kind.BLINK, 9, RefusalReason.NO_SUCH_CHANNEL));
        assertThat(ask(new Buzzer(1)))
                .containsExactly(refused(4, Kind.BUZZER, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY));
        board = new ProfiledBoard(device(false), "D-1");
        assertThat(ask(new OpenAllLoads()))
                .containsExactly(refused(5, Kind.OPEN_ALL_LOADS, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY));
    }

    @Test
    void the_interval_changes_within_what_the_device_can_do() {
        assertThat(ask(new SetInterval(99)))
                .containsExactly(refused(0, Kind.SET_INTERVAL, Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE));
        assertThat(ask(new SetInterval(500))).containsExactly(new Done(1, Kind.SET_INTERVAL.code()));
        assertThat(board.intervalMillis()).isEqualTo(500);
    }

    @Test
    void a_sign_of_life_is_heard_once() {
        assertThat(board.takeHostAlive()).isFalse();
        ask(new HostAlive(0, 0));
        assertThat(board.takeHostAlive()).isTrue();
        assertThat(board.takeHostAlive()).isFalse();
    }

    @Test
    void what_cannot_be_used_counts_as_a_bad_frame() {
        board.unusable();
        scan();
        assertThat(said).containsExactly("bad", "scan 1");
        assertThat(decoder.framesBad()).isEqualTo(1);
    }

    @Test
    void output_is_handed_over_in_portions_of_any_size() {
        scan();
        scan();
        said.clear();
        board.scanned(0, 0, new double[] {3.7}, channel -> true);
        byte[] one = new byte[1];
        while (board.hasOutput()) {
            decoder.accept(one, 0, board.take(one));
        }
        assertThat(said).containsExactly("scan 3");
    }

    private List<Object> scan() {
        board.scanned(0, 0, new double[] {3.7}, channel -> false);
        return taken();
    }

    private List<Object> ask(HostMessage message) {
        said.clear();
        byte[] frame = encoder.encode(message);
        board.accept(frame, 0, frame.length);
        return taken();
    }

    private List<Object> taken() {
        byte[] bytes = new byte[4_096];
        decoder.accept(bytes, 0, board.take(bytes));
        return said;
    }

    private Identity identity() {
        return device(true).identity("D-1", 1_000);
    }

    private static Refused refused(int sequence, Kind kind, int channel, RefusalReason reason) {
        return new Refused(sequence, kind.code(), channel, reason);
    }

    private static Description device(boolean switches) {
        return new Description(
                "test",
                ClockKind.NONE,
                1_000,
                100,
                60_000,
                new VoltsConverter(0, 5, 0.001, 0.001),
                0,
                0,
                List.of(channel(switches), channel(false)));
    }

    private static ProfiledChannel channel(boolean switches) {
        return new ProfiledChannel(
                ChannelRole.CELL,
                Optional.of(new Quantity(0, 1, 0)),
                Optional.empty(),
                Optional.empty(),
                switches,
                4_700);
    }

    @Override
    public void readings(ReadingsView view) {
        said.add("scan " + view.scan());
    }

    @Override
    public void message(int sequence, Message message) {
        said.add(message);
    }

    @Override
    public void rejected(Rejection why) {
        said.add("bad");
    }
}
