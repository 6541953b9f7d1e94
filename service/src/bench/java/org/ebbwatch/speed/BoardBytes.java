package org.ebbwatch.speed;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.wire.FrameEncoder;

/**
 * The bytes of a board of 16 cells on their loads, one scan a second: 0.1 mV and 0.02 K a count, normal noise of one count on both, a
 * fall from 3.9 V as through a resistor.
 */
final class BoardBytes {
    static final int CHANNELS = 16;
    static final long INTERVAL_MILLIS = 1_000;

    private static final int DRAWS = 8_192;
    private static final double[] NORMAL = new double[DRAWS];

    static {
        Random random = new Random(20_261_125);
        for (int draw = 0; draw < DRAWS; draw++) {
            NORMAL[draw] = random.nextGaussian();
        }
    }

    private final String serialNumber;
    private final FrameEncoder encoder = new FrameEncoder();
    private int scan;
    private int draw;
    private boolean loaded;

    BoardBytes(int number) {
        serialNumber = "BENCH-" + number;
        draw = number * 97;
    }

    void close() {
        loaded = true;
    }

    byte[] identity() {
        Set<Ability> abilities = EnumSet.of(Ability.VOLTS, Ability.CELSIUS, Ability.LOAD_SWITCH);
        List<ChannelIdentity> channels = new ArrayList<>();
        for (int channel = 0; channel < CHANNELS; channel++) {
            channels.add(new ChannelIdentity(ChannelRole.CELL, abilities, 25_000));
        }
        return encoder.encode(new Identity(
                1,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                INTERVAL_MILLIS,
                10_000,
                new Scales(100_000, 0, 20_000),
                new Converter(-2_000, 50_000, 2_000_000, 1_500, 500_000),
                0,
                serialNumber,
                "bench",
                channels));
    }

    /** The next scans, a frame each. */
    byte[] scans(int count) {
        var bytes = new ByteArrayOutputStream();
        for (int i = 0; i < count; i++) {
            bytes.writeBytes(encoder.encode(next()));
        }
        return bytes.toByteArray();
    }

    private Readings next() {
        scan++;
        int state = Reading.VOLTS_VALID | Reading.CELSIUS_VALID | (loaded ? Reading.LOAD_APPLIED : 0);
        List<Reading> all = new ArrayList<>(CHANNELS);
        for (int channel = 0; channel < CHANNELS; channel++) {
            double volts = loaded ? 39_000 * Math.exp(-scan / (400_000.0 + 1_000 * channel)) : 39_500;
            double celsius = 1_100 + 20 * Math.sin(scan / 3_000.0);
            all.add(new Reading(state, noisy(volts), noisy(celsius), 0));
        }
        return new Readings(1, scan * INTERVAL_MILLIS, scan, 0, false, 0, all);
    }

    private int noisy(double counts) {
        draw = (draw * 5 + 1) & (DRAWS - 1);
        return (int) Math.round(counts + NORMAL[draw]);
    }
}
