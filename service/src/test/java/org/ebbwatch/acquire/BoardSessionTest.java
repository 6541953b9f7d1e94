package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.Happening.Answered;
import org.ebbwatch.acquire.Happening.GapBefore;
import org.ebbwatch.acquire.Happening.Identified;
import org.ebbwatch.acquire.Happening.Link;
import org.ebbwatch.acquire.Happening.Rebooted;
import org.ebbwatch.acquire.Happening.Scan;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.GapBasis;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BoardSessionTest extends SessionBench {

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
        void that_another_board_of_the_rack_has_proven_is_refused_and_that_board_named() {
            var serialNumbers = new SerialNumbers();
            assertThat(serialNumbers.claim("EB-1", "right")).isEmpty();
            session = new BoardSession(
                    "left", Optional.empty(), serialNumbers, EventClock.fresh(), listener, host::accept);
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            scan(7, 1);
            assertThat(listener.news()).containsExactly(new Link(LinkState.WAITING), new Link(LinkState.REFUSED));
            assertThat(listener.lastDetail()).contains("EB-1", "right");
            assertThat(session.setLoad(0, true)).isEmpty();
        }

        @Test
        void proven_again_after_a_loss_is_still_the_same_board() {
            var serialNumbers = new SerialNumbers();
            session = new BoardSession(
                    "left", Optional.empty(), serialNumbers, EventClock.fresh(), listener, host::accept);
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            session.lost("unplugged", now());
            session.opened(now());
            board(Frames.identity("EB-1", 7, 1, 2));
            assertThat(listener.news()).endsWith(new Identified("EB-1"));
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
        void of_a_board_without_boot_numbers_that_begin_again_raise_the_question_who_it_is() {
            session.opened(now());
            board(Frames.identity("EB-1", 0, 1, 2));
            scan(0, 50);
            int sequence = session.setLoad(0, true).orElseThrow();
            scan(0, 1);
            listener.news();
            host.messages();
            scan(0, 2);
            assertThat(listener.news())
                    .containsExactly(
                            new Rebooted(0),
                            new GapBefore(new Gap(1_000, 1_000, GapBasis.HOST_MONOTONIC)),
                            heard(0, 2, 1_000),
                            new Answered(sequence, new Answer.TimedOut(0)));
            assertThat(host.messages()).containsExactly(new Who());
            board(Frames.identity("EB-1", 0, 1, 2));
            assertThat(listener.news()).isEmpty();
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
