package org.ebbwatch.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** Frames of the rig protocol between noise and damaged frames. Every count of a scan follows from its number. */
public final class BinaryFuzz {
    private static final int CHANNELS = 4;

    private final SplittableRandom dice;
    private final FuzzCount count = new FuzzCount();
    private final FrameEncoder encoder = new FrameEncoder();
    private final FrameDecoder decoder = new FrameDecoder(new Incoming());
    private long scan;

    public BinaryFuzz(long seed) {
        dice = new SplittableRandom(seed);
    }

    /** Feeds at least so many bytes. */
    public FuzzCount run(long bytes) {
        while (count.bytes() < bytes) {
            switch (dice.nextInt(4)) {
                case 0 -> feed(noise());
                case 1 -> {
                    count.damaged();
                    feed(damaged(frame()));
                }
                default -> {
                    byte[] frame = frame();
                    feed(new byte[1]);
                    count.sent();
                    feed(frame);
                }
            }
        }
        return count;
    }

    private byte[] frame() {
        if (dice.nextInt(8) == 0) {
            return encoder.encode(new Done(dice.nextInt(0x1_0000), 0x43));
        }
        scan = 1 + (scan + 1) % 0xFFFF_FFFEL;
        List<Reading> readings = new ArrayList<>();
        for (int channel = 0; channel < CHANNELS; channel++) {
            readings.add(new Reading(3, volts(scan, channel), celsius(scan, channel), 0));
        }
        return encoder.encode(new Readings(1, scan, scan, 0, false, 0, readings));
    }

    private byte[] damaged(byte[] frame) {
        int at = dice.nextInt(frame.length);
        switch (dice.nextInt(4)) {
            case 0 -> frame[at] ^= (byte) (1 << dice.nextInt(8));
            case 1 -> frame[at] = (byte) (frame[at] + 1 + dice.nextInt(255));
            case 2 -> frame = Arrays.copyOf(frame, at);
            default -> {
                byte[] shorter = new byte[frame.length - 1];
                System.arraycopy(frame, 0, shorter, 0, at);
                System.arraycopy(frame, at + 1, shorter, at, shorter.length - at);
                frame = shorter;
            }
        }
        return frame;
    }

    private byte[] noise() {
        byte[] noise = new byte[dice.nextInt(64)];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) dice.nextInt(256);
        }
        return noise;
    }

    private void feed(byte[] bytes) {
        int from = 0;
        while (from < bytes.length) {
            int length = Math.min(bytes.length - from, 1 + dice.nextInt(64));
            decoder.accept(bytes, from, length);
            from += length;
        }
        count.fed(bytes.length);
    }

    private static int volts(long scan, int channel) {
        return (int) mixed(4 * scan + channel);
    }

    private static int celsius(long scan, int channel) {
        return (int) (mixed(4 * scan + channel) >>> 32);
    }

    private static long mixed(long number) {
        long mixed = (number ^ (number >>> 31)) * 0x9E3779B97F4A7C15L;
        return (mixed ^ (mixed >>> 29)) * 0xBF58476D1CE4E5B9L;
    }

    private final class Incoming implements FrameSink {
        @Override
        public void readings(ReadingsView view) {
            boolean right = view.count() == CHANNELS && view.firstChannel() == 0;
            for (int i = 0; right && i < CHANNELS; i++) {
                right = view.volts(i) == volts(view.scan(), i) && view.celsius(i) == celsius(view.scan(), i);
            }
            if (right) {
                count.right();
            } else {
                count.wrong("a frame");
            }
        }

        @Override
        public void message(int sequence, Message message) {
            if (!(message instanceof Done)) {
                count.wrong("a frame");
            }
        }
    }
}
