package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.ebbwatch.acquire.Happening.GapBefore;
import org.ebbwatch.acquire.Happening.Link;
import org.ebbwatch.acquire.Happening.Silent;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.GapBasis;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** When a board counts as silent, and what it is told while it does not. */
class SessionSilenceTest extends SessionBench {

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
        void is_said_again_at_simulated_speed_with_the_question_who_while_nothing_comes() {
            connect(1_000, 2);
            scan(7, 1);
            host.messages();
            pass(600);
            assertThat(host.messages()).containsExactly(new HostAlive(7, 1), new Who(), new HostAlive(7, 1), new Who());
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
        void is_never_sooner_than_five_seconds_of_the_host_at_simulated_speed() {
            connect(10_000, 2);
            scan(7, 1);
            pass(4_900);
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
}
