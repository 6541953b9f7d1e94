package org.ebbwatch.profile;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;

/**
 * One channel of a device.
 *
 * @param role what it is wired to
 * @param volts in volts; empty where it measures none
 * @param amperes in amperes, discharge positive; empty where it measures none
 * @param temperature empty where it measures none
 * @param switchesLoad whether the device closes and opens the load
 * @param loadMilliohms of the load wired to it; 0: none or not known
 */
public record ProfiledChannel(
        ChannelRole role,
        Optional<Quantity> volts,
        Optional<Quantity> amperes,
        Optional<Temperature> temperature,
        boolean switchesLoad,
        long loadMilliohms) {

    ChannelIdentity identity() {
        Set<Ability> abilities = EnumSet.noneOf(Ability.class);
        volts.ifPresent(it -> abilities.add(Ability.VOLTS));
        amperes.ifPresent(it -> abilities.add(Ability.AMPERES));
        temperature.ifPresent(it -> abilities.add(Ability.CELSIUS));
        if (switchesLoad) {
            abilities.add(Ability.LOAD_SWITCH);
        }
        return new ChannelIdentity(role, abilities, loadMilliohms);
    }
}
