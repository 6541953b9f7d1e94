package org.ebbwatch.trace.codec;

/**
 * Says what a channel will read next. Five simple rules forecast side by side, and the one that erred least of late is
 * believed: the last reading (a quiet or jumping channel), the straight line through the last two, a quick and a slow line
 * fitted by double exponential smoothing (Holt 1957; a cell under load, with noise), and a slow mean (a cell at rest).
 * Averaging matters: with noise of one count, "the last reading" alone costs half a bit more per reading.
 *
 * <p>Forecasts carry {@value #FRACTION_BITS} fractional bits. Integer arithmetic only, so that every machine forecasts the
 * same; a wrap-around in the arithmetic would be a poor forecast, never a wrong reading. Reference from memory.
 */
final class Forecast {

    static final int FRACTION_BITS = 16;

    private static final int RULES = 5;
    private static final int MEMORY_SHIFT = 5;
    private static final int QUICK_LEVEL_SHIFT = 1;
    private static final int QUICK_TREND_SHIFT = 2;
    private static final int SLOW_LEVEL_SHIFT = 4;
    private static final int SLOW_TREND_SHIFT = 5;
    private static final int MEAN_SHIFT = 5;

    private final long[] forecasts = new long[RULES];
    private final long[] errors = new long[RULES];
    private int believed;
    private int readings;
    private long last;
    private long quickLevel;
    private long quickTrend;
    private long slowLevel;
    private long slowTrend;
    private long mean;

    long next() {
        return forecasts[believed];
    }

    void learn(int reading) {
        long now = (long) reading << FRACTION_BITS;
        if (readings == 0) {
            last = now;
            quickLevel = now;
            slowLevel = now;
            mean = now;
        } else {
            believeTheBest(now);
        }
        readings++;
        int warmUp = Integer.SIZE - Integer.numberOfLeadingZeros(readings);

        forecasts[0] = now;
        forecasts[1] = now + (now - last);
        last = now;

        int level = Math.min(QUICK_LEVEL_SHIFT, warmUp);
        long miss = now - quickLevel - quickTrend;
        quickLevel += quickTrend + (miss >> level);
        quickTrend += miss >> (level + Math.min(QUICK_TREND_SHIFT, warmUp));
        forecasts[2] = quickLevel + quickTrend;

        level = Math.min(SLOW_LEVEL_SHIFT, warmUp);
        miss = now - slowLevel - slowTrend;
        slowLevel += slowTrend + (miss >> level);
        slowTrend += miss >> (level + Math.min(SLOW_TREND_SHIFT, warmUp));
        forecasts[3] = slowLevel + slowTrend;

        mean += (now - mean) >> Math.min(MEAN_SHIFT, warmUp);
        forecasts[4] = mean;
    }

    private void believeTheBest(long now) {
        long least = Long.MAX_VALUE;
        for (int rule = 0; rule < RULES; rule++) {
            errors[rule] += Math.abs(now - forecasts[rule]) - (errors[rule] >> MEMORY_SHIFT);
            if (errors[rule] < least) {
                least = errors[rule];
                believed = rule;
            }
        }
    }
}
