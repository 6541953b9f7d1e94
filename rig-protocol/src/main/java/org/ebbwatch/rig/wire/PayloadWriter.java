package org.ebbwatch.rig.wire;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;

/** Lays out the payload of each message. */
final class PayloadWriter {
    private final ByteBuffer out;

    private PayloadWriter(ByteBuffer out) {
        this.out = out;
    }

    /** Writes the payload and gives its length. */
    static int write(Message message, byte[] into, int offset) {
        ByteBuffer out = ByteBuffer.wrap(into).order(ByteOrder.LITTLE_ENDIAN).position(offset);
        new PayloadWriter(out).write(message);
        return out.position() - offset;
    }

    private void write(Message message) {
        switch (message.kind()) {
            case IDENTITY -> identity((Identity) message);
            case READINGS -> readings((Readings) message);
            case LEAD_CHECKED -> leadChecked((LeadChecked) message);
            case DONE -> done((Done) message);
            case REFUSED -> refused((Refused) message);
            case HOST_ALIVE -> hostAlive((HostAlive) message);
            case SET_LOAD -> setLoad((SetLoad) message);
            case CHECK_LEAD -> u8(((CheckLead) message).channel());
            case BLINK -> blink((Blink) message);
            case BUZZER -> u8(((Buzzer) message).seconds());
            case SET_INTERVAL -> u32(((SetInterval) message).millis());
            case WHO, OPEN_ALL_LOADS -> {}
        }
    }

    private void identity(Identity identity) {
        u32(identity.bootNumber());
        u8(identity.clockKind().code());
        u8((identity.simulated() ? 1 : 0) | (identity.hasBuzzer() ? 2 : 0) | (identity.hasLoadRelay() ? 4 : 0));
        u16(identity.speed());
        u32(identity.intervalMillis());
        u32(identity.hostTimeoutMillis());
        u32(identity.scales().nanovoltsPerCount());
        u32(identity.scales().nanoamperesPerCount());
        u32(identity.scales().microkelvinPerCount());
        i32(identity.converter().lowestCounts());
        i32(identity.converter().highestCounts());
        u32(identity.converter().offsetNanovolts());
        u32(identity.converter().gainPartsPerMillion());
        u32(identity.converter().celsiusMicrokelvin());
        u8(identity.contactInputs());
        text(identity.serialNumber());
        text(identity.firmware());
        u8(identity.channels().size());
        for (ChannelIdentity channel : identity.channels()) {
            u8(channel.role().code());
            u8(channel.abilities().stream().mapToInt(Ability::mask).sum());
            u32(channel.loadMilliohms());
        }
    }

    private void readings(Readings readings) {
        u32(readings.bootNumber());
        u32(readings.boardMillis());
        u32(readings.scan());
        u8(readings.contacts());
        u8(readings.amperes() ? 1 : 0);
        u8(readings.firstChannel());
        u8(readings.readings().size());
        for (Reading reading : readings.readings()) {
            u8(reading.state());
            i32(reading.volts());
            i32(reading.celsius());
            if (readings.amperes()) {
                i32(reading.amperes());
            }
        }
    }

    private void leadChecked(LeadChecked checked) {
        u16(checked.requestSequence());
        u8(checked.channel());
        u8(checked.outcome().code());
        i32(checked.voltsBefore());
        i32(checked.voltsDuring());
    }

    private void done(Done done) {
        u16(done.requestSequence());
        u8(done.requestKind());
    }

    private void refused(Refused refused) {
        u16(refused.requestSequence());
        u8(refused.requestKind());
        u8(refused.channel());
        u8(refused.reason().code());
    }

    private void hostAlive(HostAlive alive) {
        u32(alive.bootNumber());
        u32(alive.lastScan());
    }

    private void setLoad(SetLoad load) {
        u8(load.channel());
        u8(load.applied() ? 1 : 0);
    }

    private void blink(Blink blink) {
        u8(blink.channel());
        u8(blink.seconds());
    }

    private void text(String ascii) {
        u8(ascii.length());
        out.put(ascii.getBytes(StandardCharsets.US_ASCII));
    }

    private void u8(int number) {
        out.put((byte) number);
    }

    private void u16(int number) {
        out.putShort((short) number);
    }

    private void u32(long number) {
        out.putInt((int) number);
    }

    private void i32(int number) {
        out.putInt(number);
    }
}
