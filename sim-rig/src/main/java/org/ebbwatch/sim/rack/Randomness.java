package org.ebbwatch.sim.rack;

/**
 * Random numbers that are the same on every machine: xoshiro256++ (Blackman and Vigna), seeded by splitmix64. For one thread.
 */
final class Randomness {
    private static final long GOLDEN = 0x9E37_79B9_7F4A_7C15L;
    private static final long LOW_48 = 0xFFFF_FFFF_FFFFL;
    private static final double NORMAL_SCALE = 1 / StrictMath.sqrt(12 + 1 / 12.0);

    private long a;
    private long b;
    private long c;
    private long d;

    private Randomness(long seed) {
        long state = seed;
        state += GOLDEN;
        a = mix(state);
        state += GOLDEN;
        b = mix(state);
        state += GOLDEN;
        c = mix(state);
        state += GOLDEN;
        d = mix(state);
    }

    /** The stream of a seed that is used for one purpose. */
    static Randomness of(long seed, String purpose) {
        return new Randomness(mix(seed) ^ mix(purpose.hashCode()));
    }

    private static long mix(long number) {
        long mixed = (number ^ (number >>> 30)) * 0xBF58_476D_1CE4_E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D0_49BB_1331_11EBL;
        return mixed ^ (mixed >>> 31);
    }

    long nextLong() {
        long result = Long.rotateLeft(a + d, 23) + a;
        long shifted = b << 17;
        c ^= a;
        d ^= b;
        b ^= c;
        a ^= d;
        c ^= shifted;
        d = Long.rotateLeft(d, 45);
        return result;
    }

    /** 0 to below 1. */
    double nextDouble() {
        return (nextLong() >>> 11) * 0x1p-53;
    }

    /**
     * Nearly normal, mean 0, standard deviation 1, never beyond 7.1: 48 coin throws, smoothed by a uniform of the other 16
     * bits.
     */
    double nextNormal() {
        long bits = nextLong();
        return (Long.bitCount(bits & LOW_48) - 24 + ((bits >>> 48) - 32_767.5) / 65_536) * NORMAL_SCALE;
    }
}
