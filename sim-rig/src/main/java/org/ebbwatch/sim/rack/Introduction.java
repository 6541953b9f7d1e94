package org.ebbwatch.sim.rack;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.sim.scenario.ConverterSpec;
import org.ebbwatch.sim.scenario.StringSpec;

/** What a board says about itself. */
final class Introduction {
    private Introduction() {}

    static Identity of(BoardSpec spec, long bootNumber, int speed, long intervalMillis, long hostTimeoutMillis) {
        ConverterSpec converter = spec.converter();
        List<ChannelIdentity> channels = new ArrayList<>();
        for (int channel = 0; channel < spec.channels().size(); channel++) {
            channels.add(channel(spec, channel));
        }
        return new Identity(
                bootNumber,
                ClockKind.CRYSTAL,
                true,
                spec.buzzer(),
                spec.loadRelay(),
                speed,
                intervalMillis,
                hostTimeoutMillis,
                new Scales(
                        ConverterSpec.NANOVOLTS_PER_COUNT,
                        ConverterSpec.NANOAMPERES_PER_COUNT,
                        ConverterSpec.MICROKELVIN_PER_COUNT),
                new Converter(
                        converter.lowestCounts(),
                        converter.highestCounts(),
                        Math.round(converter.offsetMicrovolts() * 1e3),
                        Math.round(converter.gainPartsPerMillion()),
                        Math.round(converter.celsiusKelvin() * 1e6)),
                spec.contactInputs(),
                spec.serialNumber(),
                spec.firmware(),
                channels);
    }

    private static ChannelIdentity channel(BoardSpec spec, int number) {
        ChannelSpec channel = spec.channels().get(number);
        Set<Ability> abilities = EnumSet.of(Ability.CELSIUS, Ability.BLINK);
        if (channel.measuresVolts()) {
            abilities.add(Ability.VOLTS);
            if (spec.measuresAmperes()) {
                abilities.add(Ability.AMPERES);
            }
            if (checksLead(spec, number)) {
                abilities.add(Ability.LEAD_CHECK);
            }
        }
        if (isSwitched(spec, number)) {
            abilities.add(Ability.LOAD_SWITCH);
        }
        return new ChannelIdentity(channel.role(), abilities, Math.round(loadOhms(spec, number) * 1000));
    }

    /** Whether the board can switch a load on this channel, its own or the string's that begins there. */
    static boolean isSwitched(BoardSpec spec, int number) {
        for (StringSpec string : spec.strings()) {
            if (string.firstChannel() == number) {
                return string.switched();
            }
        }
        return spec.channels().get(number).switched();
    }

    /** Whether the board checks the lead there: not where a load put on by hand would hold the lead like a cell. */
    static boolean checksLead(BoardSpec spec, int number) {
        ChannelSpec channel = spec.channels().get(number);
        boolean loadedByHand = channel.loadOhms() > 0 && !channel.switched();
        return spec.checksLeads() && channel.measuresVolts() && !loadedByHand;
    }

    private static double loadOhms(BoardSpec spec, int number) {
        for (StringSpec string : spec.strings()) {
            if (string.firstChannel() == number) {
                return string.loadOhms();
            }
        }
        return spec.channels().get(number).loadOhms();
    }
}
