package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.profile.ProfiledChannel;
import org.ebbwatch.profile.VoltsConverter;
import org.ebbwatch.rig.message.ChannelRole;

/** Reads the channels of a device and the converter of their volts. */
final class ChannelReader {
    /** Keys of a channel. */
    static final List<String> KEYS = List.of("role", "volts", "amperes", "celsius", "load", "loadOhms");

    private static final List<String> CONVERTER_KEYS =
            List.of("lowestVolts", "highestVolts", "offsetMillivolts", "gainPercent");
    private static final List<String> ROLES = Arrays.stream(ChannelRole.values())
            .map(role -> role.name().toLowerCase(Locale.ROOT))
            .toList();
    private static final int MOST_CHANNELS = 64;
    private static final VoltsConverter NO_VOLTS = new VoltsConverter(0, 1, 0, 0);

    private final QuantityReader quantities;
    private final SensorReader sensors;
    private boolean anyVolts;

    ChannelReader(RawSource source) {
        quantities = new QuantityReader(source);
        sensors = new SensorReader(quantities);
    }

    /** Reads the load of a channel. */
    interface Loads {
        /** Whether the device switches the load of this channel; what is wrong becomes a fault. */
        boolean switches(int channel, Fields fields);
    }

    /** The channels under {@code channels}, the first is channel 0. */
    List<ProfiledChannel> channels(Fields profile, Loads loads) {
        List<Fields> all = profile.list("channels", "a channel", KEYS);
        if (all.isEmpty() || all.size() > MOST_CHANNELS) {
            profile.fault("channels", "channels is a list of 1 to 64; the first is channel 0");
        }
        List<ProfiledChannel> channels = new ArrayList<>();
        for (Fields each : all) {
            channels.add(channel(channels.size(), each, loads));
        }
        return channels;
    }

    /** What measures the volts; to be called after the channels. */
    VoltsConverter converter(Fields profile) {
        Optional<Fields> converter = anyVolts || profile.has("converter")
                ? profile.neededFields("converter", CONVERTER_KEYS, "a profile with volts")
                : Optional.empty();
        return converter.map(this::converterOf).orElse(NO_VOLTS);
    }

    private VoltsConverter converterOf(Fields converter) {
        double most = VoltsConverter.FARTHEST_VOLTS;
        double lowest = converter.neededNumber("lowestVolts", -most, most, 0);
        double highest = converter.neededNumber("highestVolts", -most, most, most);
        double offset = converter.neededNumber("offsetMillivolts", 0, 1_000, 1) / 1_000;
        double gain = converter.neededNumber("gainPercent", 0, 20, 1) / 100;
        if (lowest >= highest) {
            converter.fault("highestVolts", "highestVolts is above lowestVolts");
            return NO_VOLTS;
        }
        return new VoltsConverter(lowest, highest, offset, StrictMath.hypot(gain, quantities.dividerFraction()));
    }

    private ProfiledChannel channel(int number, Fields fields, Loads loads) {
        ChannelRole role =
                ChannelRole.valueOf(fields.neededChoice("role", ROLES, "cell").toUpperCase(Locale.ROOT));
        boolean switched = loads.switches(number, fields);
        var channel = new ProfiledChannel(
                role,
                quantities.volts(fields),
                quantities.amperes(fields),
                sensors.temperature(fields),
                switched,
                Math.round(1_000 * fields.number("loadOhms", 0, 1e5, 0)));
        anyVolts |= channel.volts().isPresent();
        if (channel.volts().isEmpty()
                && channel.amperes().isEmpty()
                && channel.temperature().isEmpty()) {
            fields.fault("role", "a channel measures something: give it volts, amperes or celsius");
        }
        return channel;
    }
}
