package org.ebbwatch.calibration;

import java.util.Map;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;

/**
 * Converts the counts of one board by the scales and uncertainties it declares, and a channel's volts by its {@link Correction}
 * where there is one.
 *
 * <p>The expanded uncertainty (k = 2) of a voltage combines offset, gain and resolution as JCGM 100 (GUM) 5.1.2 does for
 * independent contributions; the resolution is a rectangular distribution of one count.
 */
public final class BoardScale {
    private static final double COVERAGE = 2;

    private final Scales scales;
    private final Map<Integer, Correction> corrections;
    private final double offsetVolts;
    private final double gain;
    private final double resolutionVolts;

    /** As the board declares it. */
    public BoardScale(Identity identity) {
        this(identity, Map.of());
    }

    /** With the corrections of some of its channels. */
    public BoardScale(Identity identity, Map<Integer, Correction> corrections) {
        this.scales = identity.scales();
        this.corrections = Map.copyOf(corrections);
        Converter converter = identity.converter();
        this.offsetVolts = converter.offsetNanovolts() * 1e-9;
        this.gain = converter.gainPartsPerMillion() * 1e-6;
        this.resolutionVolts = scales.nanovoltsPerCount() * 1e-9;
    }

    /** As the board's own scale has it. */
    public double volts(int counts) {
        return scales.volts(counts);
    }

    /** Corrected where the channel is. */
    public double volts(int channel, int counts) {
        Correction correction = corrections.get(channel);
        return correction == null ? volts(counts) : correction.volts(volts(counts));
    }

    public double amperes(int counts) {
        return scales.amperes(counts);
    }

    public double celsius(int counts) {
        return scales.celsius(counts);
    }

    /** Expanded uncertainty (k = 2) of {@code volts} as the board declares it; above 0. */
    public double expandedVolts(double volts) {
        double resolution = COVERAGE * resolutionVolts / StrictMath.sqrt(12);
        double scaled = gain * volts;
        return StrictMath.sqrt(offsetVolts * offsetVolts + scaled * scaled + resolution * resolution);
    }

    /** The same of a channel, by its correction where it has one. */
    public double expandedVolts(int channel, double volts) {
        Correction correction = corrections.get(channel);
        return correction == null ? expandedVolts(volts) : correction.expandedVolts(volts, resolutionVolts);
    }

    /** The voltage of one count; above 0. */
    public double resolutionVolts() {
        return resolutionVolts;
    }

    /** The same of a channel. */
    public double resolutionVolts(int channel) {
        Correction correction = corrections.get(channel);
        return correction == null ? resolutionVolts : correction.gain() * resolutionVolts;
    }
}
