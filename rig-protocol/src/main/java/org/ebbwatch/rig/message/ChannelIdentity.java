package org.ebbwatch.rig.message;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;

/**
 * What a board says about one of its channels.
 *
 * @param role what the channel is wired to
 * @param abilities what the board can do there; copied, unmodifiable, in the order of their bits
 * @param loadMilliohms resistance of the load wired to this channel, u32; 0 where there is none or it is not known
 */
public record ChannelIdentity(ChannelRole role, Set<Ability> abilities, long loadMilliohms) {
    public ChannelIdentity {
        Objects.requireNonNull(role, "role");
        Set<Ability> copy = EnumSet.noneOf(Ability.class);
        copy.addAll(abilities);
        abilities = Collections.unmodifiableSet(copy);
        Bounds.u32("loadMilliohms", loadMilliohms);
    }

    /** Whether the board can do this on the channel. */
    public boolean can(Ability ability) {
        return abilities.contains(ability);
    }
}
