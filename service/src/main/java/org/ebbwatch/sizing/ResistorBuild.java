package org.ebbwatch.sizing;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How a resistor is made, as far as it decides what the resistor may carry. Up to a reference temperature of the air it carries its
 * rating, from there on less along a straight line, and nothing at its highest temperature.
 *
 * <p>Temperatures: makers' usual curves (25 and 275 degrees Celsius for cement from a public derating guide; 25 and 200 for aluminium
 * housings and 70 and 155 for metal film from memory). The maker's own sheet comes first.
 */
public enum ResistorBuild {
    /** A wire in a ceramic trough filled with cement. */
    CEMENT(25, 275, 1),
    /** In an aluminium housing: its rating holds on a heatsink only. */
    ALUMINIUM(25, 200, 0.35),
    /** A film on a small rod, with leads. */
    FILM(70, 155, 1);

    private final double referenceCelsius;
    private final double highestCelsius;
    private final double shareInFreeAir;

    ResistorBuild(double referenceCelsius, double highestCelsius, double shareInFreeAir) {
        this.referenceCelsius = referenceCelsius;
        this.highestCelsius = highestCelsius;
        this.shareInFreeAir = shareInFreeAir;
    }

    /** What one of that rating may carry all the time in air that warm, watts. */
    public double mayCarry(double ratedWatts, Mounting mounting, double airCelsius) {
        double share = (highestCelsius - airCelsius) / (highestCelsius - referenceCelsius);
        return atReference(ratedWatts, mounting) * Math.max(0, Math.min(1, share));
    }

    /** How warm its surface gets with so many watts, degrees Celsius: the curve's own slope, from the air on. */
    public double surfaceCelsius(double watts, double ratedWatts, Mounting mounting, double airCelsius) {
        double kelvinPerWatt = (highestCelsius - referenceCelsius) / atReference(ratedWatts, mounting);
        return airCelsius + watts * kelvinPerWatt;
    }

    /** The rating from which on its surface stays at most that warm, watts. */
    public double ratingFor(double watts, Mounting mounting, double airCelsius, double surfaceCelsius) {
        return watts * surfaceCelsius(1, 1, mounting, 0) / (surfaceCelsius - airCelsius);
    }

    private double atReference(double ratedWatts, Mounting mounting) {
        return mounting == Mounting.HEATSINK ? ratedWatts : ratedWatts * shareInFreeAir;
    }

    /** As it is written. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The one that is written so; empty where none is. */
    public static Optional<ResistorBuild> ofKey(String key) {
        return Arrays.stream(values()).filter(each -> each.key().equals(key)).findFirst();
    }
}
