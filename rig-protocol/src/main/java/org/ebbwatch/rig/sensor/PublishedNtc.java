package org.ebbwatch.rig.sensor;

import org.ebbwatch.rig.sensor.NtcCurve.Point;

/**
 * Curves of common thermistor types of 10 kilohms at 25 degrees Celsius. Where a rack's own data sheet differs, that sheet
 * counts.
 */
public final class PublishedNtc {
    private static final Point TEN_KILOHMS_AT_25 = new Point(25, 10_000);

    /**
     * B25/85 = 3435 K, -40 to 110 degrees Celsius: Steinhart-Hart through -20, 25 and 85 degrees of the maker's table of the
     * 103AT type, from which it strays by 0.08 K at most (computed).
     */
    public static final NtcCurve BETA_3435 =
            NtcCurve.steinhartHart(8.864771487e-4, 2.515335655e-4, 1.930453502e-7, 757, 188_600, 0.08);

    /**
     * B25/85 = 3977 K, -40 to 125 degrees Celsius and somewhat beyond: the four coefficients of the maker's data sheet for
     * its material type 1, good from 0.01644 to 33.36 times the ohms at 25 degrees; strays from the sheet's table by 0.015 K
     * at most (computed).
     */
    public static final NtcCurve BETA_3977 =
            new NtcCurve(10_000, 3.3539438e-3, 2.5646095e-4, 2.5158166e-6, 1.0503069e-7, 164.4, 333_600, 0.015);

    /**
     * A leaded part, 20 to 100 degrees Celsius: the four coefficients of its data sheet; strays from the sheet's table by
     * 0.03 K at most where that was checked, 20 to 60 degrees (computed).
     */
    public static final NtcCurve LEADED =
            new NtcCurve(10_000, 3.354016e-3, 2.569850e-4, 2.620131e-6, 6.383091e-8, 680, 12_500, 0.05);

    /**
     * B25/50 = 3950 K by the plain beta formula, 0 to 85 degrees Celsius: strays from the maker's table by 0.83 K at most
     * there, far more outside (computed).
     */
    public static final NtcCurve BETA_3950_PLAIN = NtcCurve.beta(TEN_KILOHMS_AT_25, 3950, 1_059, 32_581, 0.85);

    private PublishedNtc() {}
}
