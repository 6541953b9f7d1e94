package org.ebbwatch.sim;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.sim.rack.SimBoard;

/** The host's end of a board's bytes: decodes what comes, keeps the last scan, answers with HOST_ALIVE where asked to. */
public final class TestHost implements FrameSink {
    private final FrameDecoder decoder = new FrameDecoder(this);
    private final FrameEncoder encoder = new FrameEncoder();
    private final List<Message> messages = new ArrayList<>();
    private Readings lastReadings;
    private Identity identity;
    private int scans;

    @Override
    public void readings(ReadingsView view) {
        lastReadings = view.toReadings();
        scans++;
    }

    @Override
    public void message(int sequence, Message message) {
        messages.add(message);
        if (message instanceof Identity introduced) {
            identity = introduced;
        }
    }

    /** Takes bytes of the board. */
    public void hear(byte[] bytes, int length) {
        decoder.accept(bytes, 0, length);
    }

    /** Takes what waits in a board. */
    public void hear(SimBoard board) {
        byte[] bytes = board.takeOutput();
        hear(bytes, bytes.length);
    }

    /** Sends a message and hears what comes back at once; gives the sequence of the request. */
    public int tell(SimBoard board, HostMessage message) {
        byte[] frame = encoder.encode(message);
        board.receive(frame, 0, frame.length);
        hear(board);
        return encoder.lastSequence();
    }

    public byte[] frame(HostMessage message) {
        return encoder.encode(message);
    }

    /** Steps so many seconds of event time, acknowledging every scan. */
    public void run(SimBoard board, double seconds) {
        long end = board.eventMillis() + Math.round(seconds * 1000);
        while (board.eventMillis() < end) {
            board.step();
            hear(board);
            acknowledge(board);
        }
    }

    public void acknowledge(SimBoard board) {
        tell(board, alive());
    }

    public HostAlive alive() {
        return lastReadings == null
                ? new HostAlive(0, 0)
                : new HostAlive(lastReadings.bootNumber(), lastReadings.scan());
    }

    public Readings lastReadings() {
        return lastReadings;
    }

    public Reading reading(int channel) {
        return lastReadings.readings().get(channel);
    }

    public double volts(int channel) {
        return identity.scales().volts(reading(channel).volts());
    }

    public double celsius(int channel) {
        return identity.scales().celsius(reading(channel).celsius());
    }

    public double amperes(int channel) {
        return identity.scales().amperes(reading(channel).amperes());
    }

    public Identity identity() {
        return identity;
    }

    public int scans() {
        return scans;
    }

    public FrameDecoder decoder() {
        return decoder;
    }

    /** Messages other than scans, in their order. */
    public List<Message> messages() {
        return messages;
    }

    /** The last message of a type. */
    public <T extends Message> T last(Class<T> type) {
        for (int i = messages.size() - 1; i >= 0; i--) {
            if (type.isInstance(messages.get(i))) {
                return type.cast(messages.get(i));
            }
        }
        throw new AssertionError("no " + type.getSimpleName() + " came");
    }
}
