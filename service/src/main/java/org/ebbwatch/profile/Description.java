package org.ebbwatch.profile;

import java.util.List;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.sensor.Conversion;

/**
 * What a profile says a device is, whatever its protocol: enough to answer as a board does.
 *
 * @param protocol as it stands for the firmware, up to 32 characters of printable ASCII
 * @param clockKind {@link ClockKind#NONE} where the host stamps the scans
 * @param intervalMillis between scans
 * @param leastIntervalMillis the shortest that may be asked for
 * @param mostIntervalMillis the longest that may be asked for
 * @param converter what measures the volts
 * @param contactInputs 0 to 8
 * @param hostTimeoutMillis the device opens its loads by itself when it is not asked for so long; 0: it does not
 * @param channels 1 to 64
 */
public record Description(
        String protocol,
        ClockKind clockKind,
        long intervalMillis,
        long leastIntervalMillis,
        long mostIntervalMillis,
        VoltsConverter converter,
        int contactInputs,
        long hostTimeoutMillis,
        List<ProfiledChannel> channels) {

    private static final double[] SAMPLED_CELSIUS = {-10, 0, 10, 20, 30, 40, 50, 60, 80};

    public Description {
        channels = List.copyOf(channels);
    }

    /**
     * The identity of the board it stands for; such a board cannot count its boots.
     *
     * @param serialNumber 1 to 32 characters of printable ASCII, which the device itself cannot state
     * @param nowIntervalMillis between scans now
     */
    Identity identity(String serialNumber, long nowIntervalMillis) {
        return new Identity(
                0,
                clockKind,
                false,
                false,
                false,
                1,
                nowIntervalMillis,
                hostTimeoutMillis,
                Counts.SCALES,
                new Converter(
                        Counts.ofVolts(converter.lowestVolts()).orElseThrow(),
                        Counts.ofVolts(converter.highestVolts()).orElseThrow(),
                        Math.round(converter.offsetVolts() * 1e9),
                        Math.round(converter.gainFraction() * 1e6),
                        Math.round(expandedKelvin() * 1e6)),
                contactInputs,
                serialNumber,
                protocol,
                channels.stream().map(ProfiledChannel::identity).toList());
    }

    /** The largest expanded uncertainty (k = 2) of any temperature from -10 to 80 degrees Celsius, kelvin. */
    double expandedKelvin() {
        return channels.stream()
                .flatMap(channel -> channel.temperature().stream())
                .mapToDouble(temperature -> expandedKelvin(temperature.by()))
                .max()
                .orElse(0);
    }

    private static double expandedKelvin(Thermometer thermometer) {
        double worst = 0;
        for (double celsius : SAMPLED_CELSIUS) {
            Conversion conversion =
                    thermometer.convert(thermometer.measuredAt(celsius), Thermometer.USUAL_TERMINALS_CELSIUS);
            if (conversion instanceof Conversion.Celsius found) {
                worst = Math.max(worst, found.expandedCelsius());
            }
        }
        return worst;
    }
}
