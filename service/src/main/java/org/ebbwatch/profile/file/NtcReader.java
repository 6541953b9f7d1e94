package org.ebbwatch.profile.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.rig.sensor.Divider;
import org.ebbwatch.rig.sensor.Ntc;
import org.ebbwatch.rig.sensor.NtcCurve;
import org.ebbwatch.rig.sensor.PublishedNtc;

/**
 * Reads a thermistor: a published curve by its name, or one of its own by the beta formula or that of Steinhart and Hart, which
 * then states its range and how far it strays.
 */
final class NtcReader {
    /** The keys of a thermistor. */
    static final List<String> KEYS = List.of(
            "curve",
            "ohmsAt25",
            "beta",
            "steinhartHart",
            "lowestCelsius",
            "highestCelsius",
            "errorKelvin",
            "tolerancePercent",
            "pullUpOhms",
            "pullDownOhms",
            "pullTolerancePercent");

    private static final Map<String, NtcCurve> PUBLISHED = Map.of(
            "beta3435", PublishedNtc.BETA_3435,
            "beta3977", PublishedNtc.BETA_3977,
            "leaded", PublishedNtc.LEADED,
            "beta3950plain", PublishedNtc.BETA_3950_PLAIN);
    private static final double FEWEST_OHMS = 1;
    private static final double MOST_OHMS = 1e8;

    private final Fields sensor;

    NtcReader(Fields sensor) {
        this.sensor = sensor;
    }

    Ntc ntc() {
        return new Ntc(curve(), sensor.number("tolerancePercent", 0, 20, 1) / 100);
    }

    /** The fixed resistor and where the sensor sits; empty where ohms are given. */
    Optional<Divider> divider() {
        if (sensor.has("pullUpOhms") && sensor.has("pullDownOhms")) {
            sensor.fault("pullDownOhms", "give pullUpOhms or pullDownOhms, not both");
        }
        if (sensor.has("pullUpOhms")) {
            return Optional.of(new Divider(pull("pullUpOhms"), Divider.Place.SENSOR_LOW));
        }
        return sensor.has("pullDownOhms")
                ? Optional.of(new Divider(pull("pullDownOhms"), Divider.Place.SENSOR_HIGH))
                : Optional.empty();
    }

    double fixedToleranceFraction() {
        return sensor.number("pullTolerancePercent", 0, 20, 1) / 100;
    }

    private double pull(String key) {
        return sensor.neededNumber(key, 1, 1e7, 10_000);
    }

    private NtcCurve curve() {
        if (sensor.has("curve")) {
            NtcCurve named = PUBLISHED.get(sensor.neededChoice(
                    "curve", PUBLISHED.keySet().stream().sorted().toList(), "beta3435"));
            return sensor.has("lowestCelsius") && sensor.has("highestCelsius") ? narrowed(named) : named;
        }
        double errorKelvin = sensor.neededNumber("errorKelvin", 0, 20, 1);
        if (sensor.has("steinhartHart")) {
            List<Double> abc =
                    sensor.numbers("steinhartHart", 3, "steinhartHart is a list of three numbers, A, B and C");
            return narrowed(
                    abc.isEmpty()
                            ? PublishedNtc.BETA_3435
                            : NtcCurve.steinhartHart(
                                    abc.get(0), abc.get(1), abc.get(2), FEWEST_OHMS, MOST_OHMS, errorKelvin));
        }
        double ohmsAt25 = sensor.neededNumber("ohmsAt25", 100, 1e6, 10_000);
        double beta = sensor.neededNumber("beta", 2_800, 5_000, 3_950);
        return narrowed(
                NtcCurve.beta(new NtcCurve.Point(25, ohmsAt25), beta, ohmsAt25 / 1_000, ohmsAt25 * 1_000, errorKelvin));
    }

    private NtcCurve narrowed(NtcCurve curve) {
        return curve.within(
                sensor.neededNumber("lowestCelsius", -60, 300, 0), sensor.neededNumber("highestCelsius", -60, 300, 60));
    }
}
