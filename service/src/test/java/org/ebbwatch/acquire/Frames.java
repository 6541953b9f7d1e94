package org.ebbwatch.acquire;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** Messages of a test's board, and what the host sent it. */
final class Frames {

    private Frames() {}

    static Identity identity(String serialNumber, long bootNumber, int speed, int channels) {
        ChannelIdentity channel =
                new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.LOAD_SWITCH), 10_000);
        return new Identity(
                bootNumber,
                ClockKind.CRYSTAL,
                speed > 1,
                true,
                false,
                speed,
                1_000,
                3_000,
                new Scales(100_000, 0, 1_000),
                new Converter(-10, 50_000, 500_000, 1_000, 500_000),
                0,
                serialNumber,
                "test 1",
                Collections.nCopies(channels, channel));
    }

    static Readings readings(long boot, long millis, long scan, int firstChannel, int channels) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < channels; i++) {
            readings.add(new Reading(Reading.VOLTS_VALID, (int) (scan * 100 + firstChannel + i), 20_000, 0));
        }
        return new Readings(boot, millis, scan, 0, false, firstChannel, readings);
    }

    /** One message with the sequence of its frame. */
    record Sent(int sequence, HostMessage message) {}

    /** What the host sent, taken apart again. */
    static final class HostSide implements FrameSink {
        final List<Sent> sent = new ArrayList<>();
        final FrameDecoder decoder = new FrameDecoder(this);

        void accept(byte[] frame) {
            decoder.accept(frame, 0, frame.length);
        }

        List<HostMessage> messages() {
            List<HostMessage> messages = sent.stream().map(Sent::message).toList();
            sent.clear();
            return messages;
        }

        @Override
        public void readings(ReadingsView view) {
            throw new AssertionError("a host sends no readings");
        }

        @Override
        public void message(int sequence, Message message) {
            sent.add(new Sent(sequence, (HostMessage) message));
        }
    }
}
