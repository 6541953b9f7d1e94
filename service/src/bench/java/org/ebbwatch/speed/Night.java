package org.ebbwatch.speed;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.Deflater;
import org.ebbwatch.trace.codec.Samples;
import org.ebbwatch.trace.codec.ValueKinds;

/**
 * A made-up night: cells that are drained through resistors, one scan a second, counts of 0.1 mV and 0.02 K, normal noise of
 * one count on both, one scan time in twenty a millisecond late. Always the same for the same seed.
 */
final class Night {

    static final int TEN_MINUTES = 600;

    private Night() {}

    static List<Samples> segments(int channels, int hours, long seed, int perSegment) {
        Random noise = new Random(seed);
        List<Samples> segments = new ArrayList<>();
        for (int channel = 0; channel < channels; channel++) {
            double tauSeconds = 15_000 + 1_000 * channel;
            for (int from = 0; from + perSegment <= hours * 3600; from += perSegment) {
                Samples samples = new Samples(
                        ValueKinds.COUNTS_WITHOUT_AMPERES,
                        perSegment,
                        new long[perSegment],
                        new long[perSegment],
                        new byte[perSegment],
                        new int[perSegment],
                        new int[perSegment],
                        new int[0]);
                for (int i = 0; i < perSegment; i++) {
                    double second = from + i;
                    samples.scans()[i] = 1L + from + i;
                    samples.eventMillis()[i] = 1000L * (from + i) + noise.nextInt(20) / 19;
                    samples.states()[i] = 35;
                    samples.volts()[i] =
                            (int) Math.round(39_000 * Math.exp(-second / tauSeconds) + noise.nextGaussian());
                    samples.celsius()[i] = (int) Math.round(1_100
                            + 400 * Math.exp(-second / 9_000)
                            + 50 * Math.sin(second / 3_000)
                            + noise.nextGaussian());
                }
                segments.add(samples);
            }
        }
        return segments;
    }

    /** The samples as a row each, as a table or a file of records would hold them: 21 bytes. */
    static byte[] rows(Samples samples) {
        ByteBuffer bytes = ByteBuffer.allocate(21 * samples.count()).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < samples.count(); i++) {
            bytes.putInt((int) samples.scans()[i])
                    .putLong(samples.eventMillis()[i])
                    .put(samples.states()[i]);
            bytes.putInt(samples.volts()[i]).putInt(samples.celsius()[i]);
        }
        return bytes.array();
    }

    /** The same as differences, column after column and byte plane after byte plane: the best a general packer is offered. */
    static byte[] planes(Samples samples) {
        int count = samples.count();
        ByteBuffer bytes = ByteBuffer.allocate(17 * count);
        long[] columns = new long[4];
        for (int plane = 0; plane < 4; plane++) {
            for (int column = 0; column < 4; column++) {
                columns[column] = 0;
                for (int i = 0; i < count; i++) {
                    long now =
                            switch (column) {
                                case 0 -> samples.scans()[i];
                                case 1 -> samples.eventMillis()[i];
                                case 2 -> samples.volts()[i];
                                default -> samples.celsius()[i];
                            };
                    long step = now - columns[column];
                    columns[column] = now;
                    bytes.put((byte) (((step << 1) ^ (step >> 63)) >>> (8 * plane)));
                }
            }
        }
        bytes.put(samples.states(), 0, count);
        return bytes.array();
    }

    static int deflated(byte[] bytes) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        deflater.setInput(bytes);
        deflater.finish();
        byte[] out = new byte[bytes.length + 100];
        int length = 0;
        while (!deflater.finished()) {
            length += deflater.deflate(out);
        }
        deflater.end();
        return length;
    }

    /**
     * Bits per reading of a code that knows the spread of the differences of the best order (0, 1 or 2) beforehand: their
     * entropy over all segments. A code that must learn the spread in every segment cannot reach it with such differences.
     */
    static double bestDifferenceBits(List<int[]> columns) {
        double best = Double.MAX_VALUE;
        for (int order = 0; order <= 2; order++) {
            Map<Integer, Integer> seen = new HashMap<>();
            int total = 0;
            for (int[] column : columns) {
                int[] differences = column;
                for (int step = 0; step < order; step++) {
                    differences = differences(differences);
                }
                for (int difference : differences) {
                    seen.merge(difference, 1, Integer::sum);
                    total++;
                }
            }
            double bits = 0;
            for (int times : seen.values()) {
                bits -= times * Math.log((double) times / total) / Math.log(2);
            }
            best = Math.min(best, bits / total);
        }
        return best;
    }

    private static int[] differences(int[] column) {
        int[] differences = new int[column.length - 1];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = column[i + 1] - column[i];
        }
        return differences;
    }
}
