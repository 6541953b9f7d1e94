package org.ebbwatch.passage;

import java.util.Collections;
import java.util.Set;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;

/** A board that measures and can do nothing else. */
class PlainBoard implements BoardControl {

    /** A board with so many cell channels that read volts and degrees, a scan every so many milliseconds. */
    static Identity identity(int channels, long intervalMillis) {
        var channel = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.CELSIUS), 0);
        return new Identity(
                1,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                intervalMillis,
                0,
                new Scales(100_000, 0, 1_000),
                new Converter(-5_000, 50_000, 400_000, 500, 300_000),
                0,
                "EB-0001",
                "invented 1",
                Collections.nCopies(channels, channel));
    }

    @Override
    public void openAllLoads(String board) {}

    @Override
    public void setLoad(String board, int channel, boolean closed) {}

    @Override
    public boolean checkLead(String board, int channel) {
        return false;
    }

    @Override
    public boolean blink(String board, int channel, int seconds) {
        return false;
    }
}
