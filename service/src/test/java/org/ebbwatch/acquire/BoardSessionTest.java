package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.Happening.Answered;
import org.ebbwatch.acquire.Happening.GapBefore;
import org.ebbwatch.acquire.Happening.Identified;
import org.ebbwatch.acquire.Happening.Lead;
import org.ebbwatch.acquire.Happening.Link;
import org.ebbwatch.acquire.Happening.Rebooted;
import org.ebbwatch.acquire.Happening.Scan;
import org.ebbwatch.acquire.Happening.Silent;
import org.ebbwatch.rig.message.BoardMessage;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.GapBasis;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BoardSessionTest {

    private final RecordingListener listener = new RecordingListener();
    private final Frames.HostSide host = new Frames.HostSide();
    private final FrameEncoder boardEncoder = new FrameEncoder();
    private BoardSession session = session(Optional.of("EB-1"));
    private long hostMillis;

    private BoardSession session(Optional<String> serialNumber) {
        return new BoardSession("left", serialNumber, EventClock.fresh(), listener, host::accept);
    }

    private HostTime now() {
        return new HostTime("host", hostMillis * 1_000_000, hostMillis, WallQuality.KNOWN);
    }

    /** The board sends. */
    private void board(BoardMessage message) {
        byte[] frame = boardEncoder.encode(message);
        session.accept(frame, 0, frame.length, now());
    }

    /** Time passes with a look at the port every 100 ms. */
    private void pass(long millis) {
        for (long passed = 0; passed < millis; passed += 100) {
            hostMillis += 100;
            session.tick(now());
        }
    }

    private void connect(int speed, int channels) {
        session.opened(now());
        board(Frames.identity("EB-1", 7, speed, channels));
        listener.news();
        host.messages();
    }

    private void scan(long boot, long scan) {
        board(Frames.readings(boot, 1_000 * scan, scan, 0, 2));
    }

    private static Scan heard(long boot, long scan, long eventMillis) {
        return new Scan(boot, scan, eventMillis, (int) scan * 100);
    }

    @Nested
    class identity {

        @Test
        void is_asked_for_on_open_and_again_with_longer_pauses() {
            session.opened(now());
            assertThat(host.messages()).containsExactly(new Who());
            pass(16_000);
            assertThat(host.messages()).containsExactly(new Who(), new Who(), new Who(), new Who());
        }

        @Test
        void proven_makes_the_board_connected() {
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(listener.news())
                    .containsExactly(
                            new Link(LinkState.WAITING), new Link(LinkState.CONNECTED), new Identified("EB-1"));
            assertThat(host.messages()).containsExactly(new Who(), new HostAlive(7, 0));
        }

        @Test
        void must_be_proven_before_readings_count_or_requests_go_out() {
            session.opened(now());
            scan(7, 1);
            assertThat(session.setLoad(0, true)).isEmpty();
            assertThat(session.openAllLoads()).isEmpty();
            assertThat(host.messages()).containsExactly(new Who());
            assertThat(session.counts().unattributedFrames()).isEqualTo(1);
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(host.messages()).containsExactly(new HostAlive(7, 1));
            assertThat(listener.news()).noneMatch(Scan.class::isInstance);
        }

        @Test
        void of_another_board_is_refused_and_the_expected_one_named() {
            session.opened(now());
            board(Frames.identity("EB-2", 7, 1, 2));
            scan(7, 1);
            pass(2_000);
            assertThat(listener.news()).containsExactly(new Link(LinkState.WAITING), new Link(LinkState.REFUSED));
            assertThat(listener.lastDetail()).contains("EB-1", "EB-2");
            assertThat(session.setLoad(0, true)).isEmpty();
            assertThat(host.messages()).containsOnly(new Who());
        }

        @Test
        void of_another_board_in_the_middle_of_a_connection_is_refused() {
            connect(1, 2);
            board(Frames.identity("EB-2", 7, 1, 2));
            scan(7, 1);
            assertThat(listener.news()).containsExactly(new Link(LinkState.REFUSED));
            assertThat(session.setLoad(0, true)).isEmpty();
        }

        @Test
        void not_expected_beforehand_is_the_first_one_proven() {
            session = session(Optional.empty());
            session.opened(now());
            board(Frames.identity("EB-9", 7, 1, 2));
            session.lost("unplugged", now());
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(listener.news()).endsWith(new Link(LinkState.REFUSED));
            assertThat(listener.lastDetail()).contains("EB-9");
        }

        @Test
        void repeated_unasked_for_within_a_boot_is_no_news() {
            connect(1, 2);
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(listener.news()).isEmpty();
        }

        @Test
        void in_another_version_of_the_protocol_is_refused() {
            session.opened(now());
            byte[] versionTwo = VersionTwo.frame();
            session.accept(versionTwo, 0, versionTwo.length, now());
            assertThat(listener.news()).endsWith(new Link(LinkState.REFUSED));
            assertThat(listener.lastDetail()).contains("version 2");
        }

        @Test
        void that_does_not_come_is_explained() {
            session.opened(now());
            pass(5_100);
            assertThat(listener.lastDetail()).contains("nothing answers");
        }

        @Test
        void that_does_not_come_out_of_a_stream_of_rubbish_points_at_the_baud_rate() {
            session.opened(now());
            session.accept(new byte[] {5, 4, 3, 2, 0}, 0, 5, now());
            pass(5_100);
            assertThat(listener.lastDetail()).contains("baud rate");
        }
    }

    @Nested
    class scans {

        @Test
        void are_handed_on_with_event_time() {
            connect(1, 2);
            scan(7, 1);
            scan(7, 2);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0), heard(7, 2, 1_000));
        }

        @Test
        void arrive_cut_anywhere() {
            connect(1, 2);
            byte[] frame = boardEncoder.encode(Frames.readings(7, 1_000, 1, 0, 2));
            for (int i = 0; i < frame.length; i++) {
                session.accept(frame, i, 1, now());
            }
            assertThat(listener.news()).containsExactly(heard(7, 1, 0));
        }

        @Test
        void in_several_frames_are_put_together_in_any_order() {
            connect(1, 5);
            board(Frames.readings(7, 1_000, 1, 3, 2));
            assertThat(listener.news()).isEmpty();
            board(Frames.readings(7, 1_000, 1, 0, 3));
            assertThat(listener.news()).containsExactly(heard(7, 1, 0));
        }

        @Test
        void that_lack_a_frame_are_counted_and_not_handed_on() {
            connect(1, 5);
            board(Frames.readings(7, 1_000, 1, 0, 3));
            board(Frames.readings(7, 2_000, 2, 0, 3));
            board(Frames.readings(7, 2_000, 2, 3, 2));
            assertThat(listener.news()).containsExactly(heard(7, 2, 0));
            assertThat(session.counts().partialScans()).isEqualTo(1);
        }

        @Test
        void that_come_again_are_counted_and_not_handed_on() {
            connect(1, 5);
            board(Frames.readings(7, 1_000, 1, 0, 5));
            board(Frames.readings(7, 2_000, 2, 0, 3));
            board(Frames.readings(7, 1_000, 1, 3, 2));
            board(Frames.readings(7, 2_000, 2, 3, 2));
            assertThat(listener.news()).containsExactly(heard(7, 1, 0), heard(7, 2, 1_000));
            assertThat(session.counts().repeatedScans()).isEqualTo(1);
            assertThat(session.counts().partialScans()).isZero();
        }

        @Test
        void of_channels_the_board_does_not_have_are_counted_and_not_handed_on() {
            connect(1, 2);
            board(Frames.readings(7, 1_000, 1, 1, 2));
            assertThat(listener.news()).isEmpty();
            assertThat(session.counts().misfitFrames()).isEqualTo(1);
        }

        @Test
        void of_another_boot_wait_for_the_identity() {
            connect(1, 2);
            scan(7, 9);
            hostMillis += 3_000;
            scan(8, 1);
            assertThat(host.messages()).endsWith(new Who());
            assertThat(session.setLoad(0, true)).isEmpty();
            board(Frames.identity("EB-1", 8, 1, 2));
            listener.news();
            hostMillis += 1_000;
            scan(8, 2);
            assertThat(listener.news())
                    .containsExactly(
                            new Rebooted(8),
                            new GapBefore(new Gap(2_996, 5_004, GapBasis.HOST_MONOTONIC)),
                            heard(8, 2, 2_996));
        }

        @Test
        void after_a_lost_link_follow_a_gap_the_board_measured() {
            connect(1, 2);
            scan(7, 1);
            session.lost("unplugged", now());
            pass(3_000);
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(host.messages()).endsWith(new HostAlive(7, 1));
            listener.news();
            scan(7, 4);
            assertThat(listener.news())
                    .containsExactly(new GapBefore(new Gap(3_000, 3_000, GapBasis.BOARD_CLOCK)), heard(7, 4, 3_000));
        }

        @Test
        void of_a_board_without_boot_numbers_begin_anew_after_it_says_so() {
            session.opened(now());
            board(Frames.identity("EB-1", 0, 1, 2));
            scan(0, 50);
            listener.news();
            hostMillis += 2_000;
            board(Frames.identity("EB-1", 0, 1, 2));
            scan(0, 1);
            assertThat(listener.news())
                    .containsExactly(
                            new Identified("EB-1"),
                            new Rebooted(0),
                            new GapBefore(new Gap(998, 3_002, GapBasis.HOST_MONOTONIC)),
                            heard(0, 1, 998));
        }
    }

    @Nested
    class host_alive {

        @Test
        void goes_out_twice_a_second_at_real_speed_with_the_last_scan() {
            connect(1, 2);
            scan(7, 1);
            pass(500);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 1));
            scan(7, 2);
            assertThat(host.messages()).isEmpty();
            pass(1_000);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 2), new HostAlive(7, 2));
        }

        @Test
        void goes_out_after_every_scan_at_simulated_speed() {
            connect(1_000, 2);
            scan(7, 1);
            scan(7, 2);
            scan(7, 2);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 1), new HostAlive(7, 2));
        }

        @Test
        void is_said_again_at_simulated_speed_while_nothing_comes() {
            connect(1_000, 2);
            scan(7, 1);
            host.messages();
            pass(600);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 1), new HostAlive(7, 1));
        }

        @Test
        void stops_with_a_silence_and_begins_with_the_next_scan() {
            connect(1, 2);
            scan(7, 1);
            pass(5_000);
            host.messages();
            pass(3_000);
            assertThat(host.messages()).isEmpty();
            scan(7, 9);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 9));
        }
    }

    @Nested
    class silence {

        @Test
        void is_told_once_after_five_seconds() {
            connect(1, 2);
            scan(7, 1);
            pass(4_900);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0));
            pass(20_000);
            assertThat(listener.news()).containsExactly(new Silent(0));
        }

        @Test
        void is_not_broken_by_answers_or_rubbish() {
            connect(1, 2);
            scan(7, 1);
            pass(3_000);
            board(new Done(999, Kind.SET_LOAD.code()));
            session.accept(new byte[] {1, 2, 0}, 0, 3, now());
            pass(2_000);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0), new Silent(0));
        }

        @Test
        void takes_three_intervals_where_these_are_longer() {
            connect(1, 2);
            int sequence = session.setInterval(4_000).orElseThrow();
            board(new Done(sequence, Kind.SET_INTERVAL.code()));
            scan(7, 1);
            pass(11_900);
            assertThat(listener.news()).noneMatch(Silent.class::isInstance);
            pass(100);
            assertThat(listener.news()).containsExactly(new Silent(0));
        }

        @Test
        void is_told_of_a_board_that_never_appeared() {
            session.tick(now());
            session.unreachable("The port does not exist.", now());
            pass(5_000);
            assertThat(listener.news()).containsExactly(new Link(LinkState.WAITING), new Silent(0));
        }

        @Test
        void is_told_of_a_board_that_was_unplugged() {
            connect(1, 2);
            scan(7, 1);
            session.lost("unplugged", now());
            pass(5_000);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0), new Link(LinkState.LOST), new Silent(0));
        }

        @Test
        void is_never_sooner_than_a_second_of_the_host_at_simulated_speed() {
            connect(10_000, 2);
            scan(7, 1);
            pass(900);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0));
            pass(100);
            assertThat(listener.news()).containsExactly(new Silent(0));
        }

        @Test
        void is_not_found_in_a_pause_of_the_machine() {
            connect(10_000, 2);
            scan(7, 1);
            hostMillis += 60_000;
            session.tick(now());
            pass(600);
            scan(7, 2);
            assertThat(listener.news()).containsExactly(heard(7, 1, 0), heard(7, 2, 1_000));
        }

        @Test
        void on_the_boards_own_clock_is_told_whatever_the_speed() {
            connect(10_000, 2);
            scan(7, 1);
            scan(7, 601);
            assertThat(listener.news())
                    .containsExactly(
                            heard(7, 1, 0),
                            new Silent(0),
                            new GapBefore(new Gap(600_000, 600_000, GapBasis.BOARD_CLOCK)),
                            heard(7, 601, 600_000));
        }

        @Test
        void that_was_told_is_not_told_again_by_the_boards_clock() {
            connect(1, 2);
            scan(7, 1);
            pass(7_000);
            scan(7, 8);
            assertThat(listener.news())
                    .containsExactly(
                            heard(7, 1, 0),
                            new Silent(0),
                            new GapBefore(new Gap(7_000, 7_000, GapBasis.BOARD_CLOCK)),
                            heard(7, 8, 7_000));
        }

        @Test
        void while_the_service_was_off_is_the_services_and_only_a_gap() {
            EventClock before = EventClock.fresh();
            before.accept(7, 1_000, 1, now());
            EventClock resumed = EventClock.resumed(before.lastSeen(), 0);
            session = new BoardSession("left", Optional.empty(), resumed, listener, host::accept);
            hostMillis += 60_000;
            connect(1, 2);
            scan(7, 61);
            assertThat(listener.news())
                    .containsExactly(
                            new GapBefore(new Gap(60_000, 60_000, GapBasis.BOARD_CLOCK)), heard(7, 61, 60_000));
        }
    }

    @Nested
    class requests {

        @Test
        void are_sent_and_answered_by_sequence() {
            connect(1, 2);
            int closing = session.setLoad(1, true).orElseThrow();
            int blinking = session.blink(0, 5).orElseThrow();
            assertThat(host.sent.get(0)).isEqualTo(new Frames.Sent(closing, new SetLoad(1, true)));
            board(new Done(blinking, Kind.BLINK.code()));
            Refused refusal = new Refused(closing, Kind.SET_LOAD.code(), 1, RefusalReason.WHILE_BONDED);
            board(refusal);
            assertThat(listener.news())
                    .containsExactly(
                            new Answered(blinking, new Answer.Done()),
                            new Answered(closing, new Answer.Refused(refusal)));
        }

        @Test
        void for_a_lead_check_are_answered_by_its_outcome() {
            connect(1, 2);
            int sequence = session.checkLead(1).orElseThrow();
            assertThat(host.messages()).containsExactly(new CheckLead(1));
            board(new LeadChecked(sequence, 1, LeadOutcome.OPEN, 3, 900));
            board(new Done(sequence, Kind.CHECK_LEAD.code()));
            assertThat(listener.news())
                    .containsExactly(new Lead(1, LeadOutcome.OPEN, 3, 900), new Answered(sequence, new Answer.Done()));
            assertThat(session.counts().unexpectedAnswers()).isEqualTo(1);
        }

        @Test
        void without_an_answer_time_out_after_two_seconds_and_a_late_answer_is_passed_over() {
            connect(1, 2);
            int sequence = session.setLoad(1, true).orElseThrow();
            pass(1_900);
            assertThat(listener.news()).isEmpty();
            pass(100);
            assertThat(listener.news()).containsExactly(new Answered(sequence, new Answer.TimedOut(2_000)));
            board(new Done(sequence, Kind.SET_LOAD.code()));
            assertThat(listener.news()).isEmpty();
        }

        @Test
        void are_not_answered_by_another_kind() {
            connect(1, 2);
            int sequence = session.setLoad(1, true).orElseThrow();
            board(new Done(sequence, Kind.BLINK.code()));
            assertThat(listener.news()).isEmpty();
        }

        @Test
        void end_with_the_link() {
            connect(1, 2);
            int sequence = session.buzzer(3).orElseThrow();
            session.lost("unplugged", now());
            assertThat(listener.news())
                    .containsExactly(new Link(LinkState.LOST), new Answered(sequence, new Answer.TimedOut(0)));
            assertThat(session.setLoad(0, false)).isEmpty();
        }

        @Test
        void end_with_a_restart_of_the_board() {
            connect(1, 2);
            int sequence = session.setLoad(0, true).orElseThrow();
            board(Frames.identity("EB-1", 8, 1, 2));
            assertThat(listener.news())
                    .containsExactly(new Answered(sequence, new Answer.TimedOut(0)), new Identified("EB-1"));
        }
    }

    @Test
    void a_frame_cut_short_is_given_up_after_a_second() {
        connect(1, 2);
        byte[] frame = boardEncoder.encode(Frames.readings(7, 1_000, 1, 0, 2));
        session.accept(frame, 0, frame.length - 4, now());
        pass(1_100);
        scan(7, 2);
        assertThat(listener.news()).containsExactly(heard(7, 2, 0));
        assertThat(session.counts().badFrames()).isEqualTo(1);
    }

    @Test
    void bytes_that_come_after_the_loss_are_not_read() {
        connect(1, 2);
        session.lost("unplugged", now());
        board(Frames.identity("EB-1", 7, 1, 2));
        assertThat(listener.news()).containsExactly(new Link(LinkState.LOST));
        assertThat(List.of(session.identity())).containsExactly(Optional.empty());
    }
}
