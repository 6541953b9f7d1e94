package org.ebbwatch.time;

import java.util.OptionalLong;

/**
 * How much event time can have passed between two scans by the host's clocks alone, when the board's own clock does not span
 * them. Three cases, the best first:
 *
 * <ul>
 *   <li>the host ran on: its monotonic time, give or take {@value #DELIVERY_MILLIS} ms of delivery and a thousandth of rate
 *       (from memory: host clocks keep 100 parts per million);
 *   <li>the host was restarted too but its wall clock was believed before and after: that, give or take
 *       {@value #WALL_DOUBT_MILLIS} ms;
 *   <li>neither: no bound.
 * </ul>
 *
 * A simulated board at speed n may have run anywhere between not at all and n times as fast as the host, plus its credit.
 */
final class ElapsedBounds {

    private static final long DELIVERY_MILLIS = 1_000;
    private static final long WALL_DOUBT_MILLIS = 60_000;
    private static final long CREDIT_MILLIS = 2_000;

    private ElapsedBounds() {}

    /** The interval between {@code from} and {@code to}, its least raised to {@code atLeastMillis} as far as its most allows. */
    static Gap between(HostTime from, HostTime to, int speed, long atLeastMillis) {
        OptionalLong monotonic = to.monotonicMillisSince(from);
        if (monotonic.isPresent()) {
            long host = monotonic.getAsLong();
            return bounds(host, DELIVERY_MILLIS + host / 1_000, speed, atLeastMillis, GapBasis.HOST_MONOTONIC);
        }
        OptionalLong wall = to.wallMillisSince(from);
        if (wall.isPresent()) {
            return bounds(wall.getAsLong(), WALL_DOUBT_MILLIS, speed, atLeastMillis, GapBasis.HOST_WALL);
        }
        return unknown(atLeastMillis);
    }

    static Gap unknown(long atLeastMillis) {
        return new Gap(Math.max(1, atLeastMillis), Gap.UNBOUNDED, GapBasis.NONE);
    }

    private static Gap bounds(long hostMillis, long doubtMillis, int speed, long atLeastMillis, GapBasis basis) {
        long least = speed == 1 ? hostMillis - doubtMillis : 0;
        long most = speed == 1 ? hostMillis + doubtMillis : hostMillis * speed + CREDIT_MILLIS;
        return new Gap(Math.max(1, Math.min(most, Math.max(least, atLeastMillis))), most, basis);
    }
}
