package org.ebbwatch.time;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class EventClockTest {

    private static final long WRAP = 1L << 32;
    private static final long HOUR = 3_600_000;

    private EventClock clock = EventClock.fresh();
    private long hostMillis;

    EventClockTest() {
        clock.pace(BoardPace.real(1_000));
    }

    private static HostTime host(String boot, long monotonicMillis, long wallMillis, WallQuality quality) {
        return new HostTime(boot, monotonicMillis * 1_000_000, wallMillis, quality);
    }

    private HostTime now() {
        return host("host-1", hostMillis, hostMillis, WallQuality.KNOWN);
    }

    /** One scan after the host has waited. */
    private Arrival scan(long boot, long boardMillis, long scan, long afterHostMillis) {
        hostMillis += afterHostMillis;
        return clock.accept(boot, boardMillis, scan, now());
    }

    private static Arrival gap(long eventMillis, long least, long most, GapBasis basis) {
        return new Arrival.AfterGap(eventMillis, new Gap(least, most, basis), false);
    }

    private static Arrival reboot(long eventMillis, long least, long most, GapBasis basis) {
        return new Arrival.AfterGap(eventMillis, new Gap(least, most, basis), true);
    }

    @Nested
    class within_one_boot {

        @Test
        void the_first_scan_is_at_event_time_nought() {
            assertThat(scan(3, 77_000, 12, 0)).isEqualTo(new Arrival.Next(0));
        }

        @Test
        void event_time_follows_the_board_and_not_the_host() {
            scan(1, 500, 1, 0);
            assertThat(scan(1, 1_501, 2, 700)).isEqualTo(new Arrival.Next(1_001));
            assertThat(scan(1, 2_499, 3, 3_000)).isEqualTo(new Arrival.Next(1_999));
        }

        @Test
        void a_wrap_at_2_to_the_32_is_one_more_interval() {
            scan(1, WRAP - 400, 1_000, 0);
            assertThat(scan(1, 600, 1_001, 1_000)).isEqualTo(new Arrival.Next(1_000));
        }

        @Test
        void an_outage_of_more_than_a_wrap_is_counted_by_scan_numbers() {
            long fiftyDays = 50 * 24 * HOUR;
            scan(1, 0, 1, 0);
            assertThat(scan(1, fiftyDays % WRAP, 1 + fiftyDays / 1_000, fiftyDays))
                    .isEqualTo(gap(fiftyDays, fiftyDays, fiftyDays, GapBasis.BOARD_CLOCK));
        }

        @Test
        void a_repeated_and_a_late_scan_are_dropped_and_counted() {
            scan(1, 1_000, 1, 0);
            scan(1, 3_000, 3, 2_000);
            assertThat(clock.isRepeat(1, 3)).isTrue();
            assertThat(scan(1, 3_000, 3, 1)).isEqualTo(new Arrival.Dropped());
            assertThat(scan(1, 2_000, 2, 1)).isEqualTo(new Arrival.Dropped());
            assertThat(clock.dropped()).isEqualTo(2);
            assertThat(clock.isRepeat(1, 4)).isFalse();
            assertThat(scan(1, 4_000, 4, 998)).isEqualTo(new Arrival.Next(3_000));
        }

        @Test
        void the_scan_number_may_wrap_too() {
            scan(1, 1_000, WRAP - 1, 0);
            assertThat(scan(1, 2_000, 1, 1_000)).isEqualTo(new Arrival.Next(1_000));
        }

        @Test
        void one_lost_scan_is_no_gap() {
            scan(1, 1_000, 1, 0);
            assertThat(scan(1, 3_000, 3, 2_000)).isEqualTo(new Arrival.Next(2_000));
        }

        @Test
        void more_than_a_silence_is_a_gap_the_board_measured_exactly() {
            scan(1, 1_000, 1, 0);
            assertThat(scan(1, 6_000, 6, 5_000)).isEqualTo(new Arrival.Next(5_000));
            assertThat(scan(1, 11_001, 11, 5_000)).isEqualTo(gap(10_001, 5_001, 5_001, GapBasis.BOARD_CLOCK));
        }

        @Test
        void a_scan_missing_after_a_lost_link_is_a_gap_however_short() {
            scan(1, 1_000, 1, 0);
            clock.linkLost();
            assertThat(scan(1, 3_000, 3, 2_000)).isEqualTo(gap(2_000, 2_000, 2_000, GapBasis.BOARD_CLOCK));
            clock.linkLost();
            assertThat(scan(1, 4_000, 4, 1_000)).isEqualTo(new Arrival.Next(3_000));
        }

        @Test
        void a_clock_that_stands_still_leaves_event_time_increasing() {
            scan(1, 1_000, 1, 0);
            assertThat(scan(1, 1_000, 2, 1_000)).isEqualTo(new Arrival.Next(1));
            assertThat(scan(1, 1_000, 3, 1_000)).isEqualTo(new Arrival.Next(2));
        }
    }

    @Nested
    class a_clock_that_leaps {

        @Test
        void is_not_followed_ahead_and_counts_as_odd() {
            scan(1, 1_000, 1, 0);
            assertThat(scan(1, 1_000 + 10 * HOUR, 2, 2_000)).isEqualTo(gap(998, 998, 3_002, GapBasis.HOST_MONOTONIC));
            assertThat(clock.rate().odd()).isTrue();
            assertThat(scan(1, 2_000 + 10 * HOUR, 3, 1_000)).isEqualTo(new Arrival.Next(1_998));
        }

        @Test
        void is_not_followed_back_and_counts_as_odd() {
            scan(1, 50_000, 1, 0);
            assertThat(scan(1, 40_000, 2, 1_000)).isEqualTo(gap(1, 1, 2_001, GapBasis.HOST_MONOTONIC));
            assertThat(clock.rate().odd()).isTrue();
        }

        @Test
        void is_followed_at_simulated_speed_where_the_host_measures_nothing() {
            clock.pace(new BoardPace(true, 10_000, 1_000));
            scan(1, 1_000, 1, 0);
            assertThat(scan(1, 1_000 + HOUR, 3_601, 1)).isEqualTo(gap(HOUR, HOUR, HOUR, GapBasis.BOARD_CLOCK));
            assertThat(clock.rate().odd()).isFalse();
        }

        @Test
        void a_step_of_the_wall_clock_is_not_noticed() {
            clock.accept(1, 1_000, 1, host("host-1", 0, 0, WallQuality.KNOWN));
            assertThat(clock.accept(1, 2_000, 2, host("host-1", 1_000, 90 * HOUR, WallQuality.KNOWN)))
                    .isEqualTo(new Arrival.Next(1_000));
            assertThat(clock.rate().odd()).isFalse();
        }
    }

    @Nested
    class after_a_restart_of_the_board {

        @Test
        void the_gap_lies_within_what_the_host_measured() {
            scan(1, 9_000, 9, 0);
            assertThat(scan(2, 1_000, 1, 20_000)).isEqualTo(reboot(18_980, 18_980, 21_020, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void the_new_run_of_the_board_is_a_lower_bound() {
            scan(1, 9_000, 9, 0);
            assertThat(scan(2, 15_000, 15, 14_500)).isEqualTo(reboot(14_000, 14_000, 15_514, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void a_clock_that_does_not_begin_at_nought_raises_no_bound() {
            scan(1, 9_000, 9, 0);
            assertThat(scan(2, 4_000_000_000L, 1, 3_000))
                    .isEqualTo(reboot(1_997, 1_997, 4_003, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void at_simulated_speed_the_host_bounds_from_above_alone() {
            clock.pace(new BoardPace(true, 100, 1_000));
            scan(1, 9_000, 9, 0);
            assertThat(scan(2, 3_000, 4, 50)).isEqualTo(reboot(3_000, 3_000, 7_000, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void event_time_goes_on_from_the_new_boot() {
            scan(1, 9_000, 9, 0);
            scan(2, 1_000, 1, 20_000);
            assertThat(scan(2, 2_000, 2, 1_000)).isEqualTo(new Arrival.Next(19_980));
        }
    }

    @Nested
    class a_board_that_cannot_count_its_boots {

        @Test
        void has_restarted_when_two_scans_in_order_begin_again() {
            scan(0, 90_000, 90, 0);
            assertThat(scan(0, 1_000, 1, 3_000)).isEqualTo(new Arrival.Dropped());
            assertThat(scan(0, 2_000, 2, 1_000)).isEqualTo(reboot(2_996, 2_996, 5_004, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void has_restarted_at_the_first_scan_when_it_said_so() {
            scan(0, 90_000, 90, 0);
            clock.restartAnnounced();
            assertThat(scan(0, 1_000, 1, 3_000)).isEqualTo(reboot(1_997, 1_997, 4_003, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void has_not_restarted_for_one_late_or_repeated_scan() {
            scan(0, 1_000, 1, 0);
            scan(0, 3_000, 3, 2_000);
            assertThat(scan(0, 3_000, 3, 0)).isEqualTo(new Arrival.Dropped());
            assertThat(scan(0, 2_000, 2, 0)).isEqualTo(new Arrival.Dropped());
            assertThat(scan(0, 4_000, 4, 1_000)).isEqualTo(new Arrival.Next(3_000));
        }

        @Test
        void has_restarted_after_a_single_scan() {
            scan(0, 1_700, 1, 0);
            assertThat(scan(0, 1_200, 1, 5_000)).isEqualTo(new Arrival.Dropped());
            assertThat(scan(0, 2_200, 2, 1_000)).isEqualTo(reboot(4_994, 4_994, 7_006, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void has_restarted_when_its_clock_goes_back_though_its_scans_go_on() {
            scan(0, 500_000, 5, 0);
            assertThat(scan(0, 8_000, 8, 300_000))
                    .isEqualTo(reboot(298_700, 298_700, 301_300, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void has_restarted_when_it_lags_far_behind_the_host() {
            scan(0, 5_000, 5, 0);
            assertThat(scan(0, 8_000, 8, HOUR))
                    .isEqualTo(reboot(3_595_400, 3_595_400, 3_604_600, GapBasis.HOST_MONOTONIC));
        }
    }

    @Nested
    class a_board_without_a_clock {

        @Test
        void is_stamped_by_the_host() {
            clock.pace(new BoardPace(false, 1, 1_000));
            scan(1, 0, 1, 0);
            assertThat(scan(1, 0, 2, 1_030)).isEqualTo(new Arrival.Next(1_030));
            assertThat(scan(1, 0, 3, 0)).isEqualTo(new Arrival.Next(1_031));
            assertThat(clock.rate().odd()).isFalse();
        }

        @Test
        void has_a_gap_the_host_measured() {
            clock.pace(new BoardPace(false, 1, 1_000));
            scan(1, 0, 1, 0);
            assertThat(scan(1, 0, 9, 8_000)).isEqualTo(gap(6_992, 6_992, 9_008, GapBasis.HOST_MONOTONIC));
        }

        @Test
        void is_stamped_by_its_scan_numbers_at_simulated_speed() {
            clock.pace(new BoardPace(false, 50, 1_000));
            scan(1, 0, 1, 0);
            assertThat(scan(1, 0, 3, 9_000)).isEqualTo(new Arrival.Next(2_000));
        }
    }

    @Nested
    class after_a_restart_of_the_service {

        private void resume(LastSeen last, long floorMillis) {
            clock = EventClock.resumed(last, floorMillis);
            clock.pace(BoardPace.real(1_000));
        }

        @Test
        void a_board_that_ran_on_measures_the_gap_itself() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-1", 0, 0, WallQuality.KNOWN)), 0);
            hostMillis = 30_000;
            assertThat(scan(4, 120_000, 120, 0)).isEqualTo(gap(100_000, 30_000, 30_000, GapBasis.BOARD_CLOCK));
        }

        @Test
        void even_a_single_scan_missing_is_a_gap() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-1", 0, 0, WallQuality.KNOWN)), 0);
            hostMillis = 2_000;
            assertThat(scan(4, 92_000, 92, 0)).isEqualTo(gap(72_000, 2_000, 2_000, GapBasis.BOARD_CLOCK));
            assertThat(scan(4, 94_000, 94, 0)).isEqualTo(new Arrival.Next(74_000));
        }

        @Test
        void no_scan_missing_is_no_gap() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-1", 0, 0, WallQuality.KNOWN)), 0);
            hostMillis = 1_000;
            assertThat(scan(4, 91_000, 91, 0)).isEqualTo(new Arrival.Next(71_000));
        }

        @Test
        void event_time_goes_on_above_whatever_was_kept() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-1", 0, 0, WallQuality.KNOWN)), 78_000);
            hostMillis = 30_000;
            assertThat(scan(4, 120_000, 120, 0)).isEqualTo(gap(100_000, 22_000, 22_000, GapBasis.BOARD_CLOCK));
        }

        @Test
        void believed_wall_clocks_bound_the_gap_when_board_and_host_were_off() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-0", 5, 0, WallQuality.KNOWN)), 0);
            assertThat(clock.accept(5, 3_000, 3, host("host-1", 9, HOUR, WallQuality.KNOWN)))
                    .isEqualTo(reboot(70_000 + HOUR - 60_000, HOUR - 60_000, HOUR + 60_000, GapBasis.HOST_WALL));
        }

        @Test
        void a_wall_clock_not_believed_bounds_nothing() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-0", 5, 0, WallQuality.KNOWN)), 0);
            assertThat(clock.accept(5, 3_000, 3, host("host-1", 9, HOUR, WallQuality.UNSYNCHRONISED)))
                    .isEqualTo(reboot(72_000, 2_000, Gap.UNBOUNDED, GapBasis.NONE));
        }

        @Test
        void a_wall_clock_that_went_back_bounds_nothing() {
            resume(new LastSeen(70_000, 4, 90_000, 90, host("host-0", 5, HOUR, WallQuality.KNOWN)), 0);
            assertThat(clock.accept(5, 3_000, 3, host("host-1", 9, 0, WallQuality.KNOWN)))
                    .isEqualTo(reboot(72_000, 2_000, Gap.UNBOUNDED, GapBasis.NONE));
        }

        @Test
        void with_nothing_but_an_event_time_the_gap_has_no_bound() {
            clock = EventClock.resumed(5_000);
            assertThat(scan(9, 3_000, 3, 0)).isEqualTo(gap(5_001, 1, Gap.UNBOUNDED, GapBasis.NONE));
        }
    }
}
