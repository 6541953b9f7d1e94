package org.ebbwatch.calibration;

import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;

/**
 * Converts the counts of one board by the scales and uncertainties it declares.
 *
 * <p>The expanded uncertainty (k = 2) of a voltage combines offset, gain and resolution as JCGM 100 (GUM) 5.1.2 does for
 * independent contributions; the resolution is a rectangular distribution of one count.
 */
public final class BoardScale {
    private static final double COVERAGE = 2;

    private final Scales scales;
    private final double offsetVolts;
    private final double gain;
    private final double resolutionVolts;

    public BoardScale(Identity identity) {
        this.scales = identity.scales();
        Converter converter = identity.converter();
        this.offsetVolts = converter.offsetNanovolts() * 1e-9;
        this.gain = converter.gainPartsPerMillion() * 1e-6;
        this.resolutionVolts = scales.nanovoltsPerCount() * 1e-9;
    }

    public double volts(int counts) {
        return scales.volts(counts);
    }

    public double amperes(int counts) {
        return scales.amperes(counts);
    }

    public double celsius(int counts) {
        return scales.celsius(counts);
    }

    /** Expanded uncertainty (k = 2) of {@code volts}; above 0. */
    public double expandedVolts(double volts) {
        double resolution = COVERAGE * resolutionVolts / StrictMath.sqrt(12);
        double scaled = gain * volts;
        return StrictMath.sqrt(offsetVolts * offsetVolts + scaled * scaled + resolution * resolution);
    }

    /** The voltage of one count; above 0. */
    public double resolutionVolts() {
        return resolutionVolts;
    }
}
