package org.ebbwatch.profile.text;

/**
 * Tells from a device's milliseconds that it was switched on again: they fell, and did not merely pass 2^32. As they fall a wrap
 * would be a leap ahead of the host's clock; up to a minute and a tenth of the time is forgiven. Pure.
 */
final class RestartWatch {
    private static final long WRAP = 1L << 32;
    private static final long FORGIVEN_MILLIS = 60_000;
    private static final long NANOS_PER_MILLI = 1_000_000;

    private boolean seen;
    private long lastMillis;
    private long lastNanos;

    /**
     * Takes the milliseconds of the next scan; true where the device was restarted before it.
     *
     * @param millis 0 to 2^32 - 1
     * @param nanos of the host's monotonic clock
     */
    boolean restarted(long millis, long nanos) {
        long hostMillis = (nanos - lastNanos) / NANOS_PER_MILLI;
        long wrapped = Math.floorMod(millis - lastMillis, WRAP);
        boolean fell = seen && millis < lastMillis && wrapped > hostMillis + hostMillis / 10 + FORGIVEN_MILLIS;
        seen = true;
        lastMillis = millis;
        lastNanos = nanos;
        return fell;
    }
}
