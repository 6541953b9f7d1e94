package org.ebbwatch.judge.estimate;

/**
 * Says, reading by reading, whether a temperature that stood has begun to rise: a sequential test for a ramp of unknown
 * slope that began at an unknown moment (generalised likelihood ratio over the moment and the slope; Willsky and Jones 1976,
 * from memory), with the level before and the noise learned from the readings themselves.
 *
 * <p>Readings are averaged over four seconds, or are taken singly where they come more slowly. For every moment in the last 48 means (three minutes) the ramp since then is fitted
 * against the level before; the surest one is held against a bound of {@value #BOUND} standard deviations. Measured at one
 * reading a second with white noise: no false alarm in 1,000 nights of 12 h; a rise of 0.2 K/min in noise of 0.1 K is found
 * after 50 s in the median, 1.2 times what an observer needs who knows slope, level and noise (docs/estimators.md). It
 * learns for eight minutes before it says anything.
 *
 * <p>Constant memory: 48 means of 4 bytes, none while the temperature tells nothing, and a dozen numbers.
 */
public final class HeatingTest {
    /** Standard deviations. */
    public static final double BOUND = 6.3;

    private static final long BLOCK_MILLIS = 4_000;
    private static final int BLOCKS = 48;
    private static final double LENGTH_WEIGHT = 1.0 / 16;
    private static final int LEAST_LEARNED = 120;
    private static final int LEAST_LEVELLED = 16;
    private static final int NOISE_MEMORY = 512;
    private static final int LEVEL_MEMORY = 64;
    private static final double WILD = 3;
    private static final float[] NONE = {};

    private float[] means = NONE;
    private int next;
    private int filled;
    private long blockMillis;
    private double blockSeconds;
    private double sum;
    private int count;

    private double level;
    private int levelled;
    private double variance;
    private int learned;
    private double before = Double.NaN;

    private boolean judged;
    private double score;
    private double perSecond;
    private int rampBlocks;

    /**
     * Takes one reading; a NaN is passed over.
     *
     * @param resolutionKelvin the step of one count, 0 if not known
     */
    public void add(long millis, double kelvin, double resolutionKelvin) {
        if (count > 0 && millis - blockMillis >= BLOCK_MILLIS) {
            double seconds = (millis - blockMillis) / 1000.0;
            blockSeconds = filled == 0 ? seconds : blockSeconds + LENGTH_WEIGHT * (seconds - blockSeconds);
            close(sum / count, resolutionKelvin);
            count = 0;
            sum = 0;
        }
        if (Double.isNaN(kelvin)) {
            return;
        }
        if (count == 0) {
            blockMillis = millis;
        }
        sum += kelvin;
        count++;
    }

    /** Readings before and after cannot be compared; the noise is the same. */
    public void forget() {
        if (filled == 0 && count == 0) {
            return;
        }
        next = 0;
        filled = 0;
        count = 0;
        sum = 0;
        levelled = 0;
        before = Double.NaN;
        judged = false;
        means = NONE;
    }

    /** The standard deviation of one mean, as far as it is learned; 0 before. */
    public double deviation() {
        return StrictMath.sqrt(variance);
    }

    /** Whether it rises, by all evidence. */
    public boolean isHeating() {
        return score() > BOUND;
    }

    /** How many standard deviations the surest ramp stands out of the noise. */
    public double score() {
        if (!judged) {
            judged = true;
            judge();
        }
        return score;
    }

    /**
     * The slope of the surest ramp; 0 where none stands out. Of a short ramp measured from the level before, of one that may have
     * begun before the readings kept by itself.
     */
    public double perSecond() {
        return score() > 0 ? perSecond : 0;
    }

    /** That slope less two deviations of it. */
    public double surelyPerSecond() {
        return score() > 2 ? perSecond() * (1 - 2 / score()) : 0;
    }

    /** What noise alone would make of the ramp's end: two deviations of its fit. */
    public double explainedKelvin() {
        return score() > 0 ? 2 * perSecond() * rampSeconds() / score() : 0;
    }

    /** How long ago that ramp began. */
    public double rampSeconds() {
        return score() > 0 ? rampBlocks * blockSeconds : 0;
    }

    private void close(double mean, double resolutionKelvin) {
        learnNoise(mean - before, resolutionKelvin);
        before = mean;
        if (filled == 0) {
            means = new float[BLOCKS];
        }
        if (filled == BLOCKS) {
            learnLevel(means[next]);
        } else {
            filled++;
        }
        means[next] = (float) mean;
        next = (next + 1) % BLOCKS;
        judged = false;
    }

    private void learnNoise(double difference, double resolutionKelvin) {
        if (Double.isNaN(difference)) {
            return;
        }
        learned = Math.min(learned + 1, NOISE_MEMORY);
        double floor = Math.max(1e-9, resolutionKelvin * resolutionKelvin / 12);
        double seen = difference * difference / 2;
        double most = learned < LEVEL_MEMORY ? seen : WILD * WILD * Math.max(variance, floor);
        variance += (Math.min(seen, most) - variance) / learned;
        variance = Math.max(variance, floor);
    }

    private void learnLevel(double mean) {
        levelled = Math.min(levelled + 1, LEVEL_MEMORY);
        level += (mean - level) / levelled;
    }

    private void judge() {
        score = 0;
        if (levelled < LEAST_LEVELLED || learned < LEAST_LEARNED) {
            return;
        }
        double deviation = StrictMath.sqrt(variance) * (1 + 1 / StrictMath.sqrt(learned));
        int place = next;
        if (means[back(place)] - level < deviation) {
            return;
        }
        // Of an average with weight 1 / n, and of a plain one while it is younger.
        double levelShare = levelled < LEVEL_MEMORY ? 1.0 / levelled : 1.0 / (2 * LEVEL_MEMORY - 1);
        double rise = 0;
        double risen = 0;
        double times = 0;
        double squares = 0;
        double best = 0;
        for (int blocks = 1; blocks <= filled; blocks++) {
            place = back(place);
            // One block further back, every later one is one block later in the ramp: in the middle of a block, half.
            double above = means[place] - level;
            rise += risen + above / 2;
            risen += above;
            double time = blocks - 0.5;
            times += time;
            squares += time * time;
            double spread = squares + times * times * levelShare;
            if (rise > 0 && rise * rise > best * spread) {
                best = rise * rise / spread;
                double free = (blocks * rise - times * risen) / (blocks * squares - times * times);
                double slope = blocks <= BLOCKS / 4 ? rise / squares : Math.min(rise / squares, free);
                perSecond = slope / blockSeconds;
                rampBlocks = blocks;
            }
        }
        score = StrictMath.sqrt(best) / deviation;
    }

    private static int back(int place) {
        return place == 0 ? BLOCKS - 1 : place - 1;
    }
}
