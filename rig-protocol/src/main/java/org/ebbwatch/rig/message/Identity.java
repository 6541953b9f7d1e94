package org.ebbwatch.rig.message;

import java.util.List;
import java.util.Objects;

/**
 * Who a board is and what it can do: its answer to {@link Who}, and what it says once after power-on.
 *
 * @param bootNumber u32, one more at every start of the board; 0 on a board that cannot count its starts
 * @param clockKind what drives the board's millis
 * @param simulated the readings come from a model, not from a cell
 * @param hasBuzzer the board can sound a buzzer
 * @param hasLoadRelay the board has one relay that opens every load
 * @param speed event seconds per host second, 1 to 65535; 1 on a real board
 * @param intervalMillis event time between scans now, 10 to 60000
 * @param hostTimeoutMillis the board opens every load after so much event time without HOST_ALIVE, u32; 0: no such guard
 * @param scales units per count
 * @param converter range and uncertainty of the converter
 * @param contactInputs how many contact inputs, 0 to 8
 * @param serialNumber 1 to 32 characters of printable ASCII, the same at every start
 * @param firmware 0 to 32 characters of printable ASCII
 * @param channels 1 to 64, channel 0 first; copied
 */
public record Identity(
        long bootNumber,
        ClockKind clockKind,
        boolean simulated,
        boolean hasBuzzer,
        boolean hasLoadRelay,
        int speed,
        long intervalMillis,
        long hostTimeoutMillis,
        Scales scales,
        Converter converter,
        int contactInputs,
        String serialNumber,
        String firmware,
        List<ChannelIdentity> channels)
        implements BoardMessage {
    public Identity {
        Objects.requireNonNull(clockKind, "clockKind");
        Objects.requireNonNull(converter, "converter");
        Bounds.u32("bootNumber", bootNumber);
        Bounds.within("speed", speed, 1, Bounds.U16_HIGHEST);
        Bounds.within("intervalMillis", intervalMillis, SetInterval.LEAST_MILLIS, SetInterval.MOST_MILLIS);
        Bounds.u32("hostTimeoutMillis", hostTimeoutMillis);
        Bounds.within("contactInputs", contactInputs, 0, 8);
        Bounds.printableAscii("serialNumber", serialNumber, 1, 32);
        Bounds.printableAscii("firmware", firmware, 0, 32);
        channels = List.copyOf(channels);
        Bounds.within("number of channels", channels.size(), 1, Bounds.CHANNELS_MOST);
        requireScale(channels, Ability.VOLTS, scales.nanovoltsPerCount());
        requireScale(channels, Ability.AMPERES, scales.nanoamperesPerCount());
        requireScale(channels, Ability.CELSIUS, scales.microkelvinPerCount());
    }

    private static void requireScale(List<ChannelIdentity> channels, Ability ability, long perCount) {
        if (perCount == 0 && channels.stream().anyMatch(channel -> channel.can(ability))) {
            throw new IllegalArgumentException("a channel has the ability " + ability + ", but its scale is 0");
        }
    }

    @Override
    public Kind kind() {
        return Kind.IDENTITY;
    }
}
