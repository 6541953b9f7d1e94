package org.ebbwatch.rig.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;

/**
 * The readings of one frame, read where they lie in the decoder's buffer: nothing is allocated, and nothing may be kept
 * beyond the call that hands the view over. Ranges and units are those of {@link Readings} and {@link Reading}.
 */
public final class ReadingsView {
    static final int FIXED = 16;

    private static final int STATE_MASK = 0x7F;
    private static final int AMPERES_LAYOUT = 1;
    private static final int CHANNELS_MOST = 64;

    private final byte[] bytes;
    private int sequence;
    private int stride;

    ReadingsView(byte[] bytes) {
        this.bytes = bytes;
    }

    /** Lays the view over a decoded frame; gives what is wrong with its payload, or null where nothing is. */
    String wrap(int frameSequence, int payloadLength) {
        sequence = frameSequence;
        if (payloadLength < FIXED) {
            return "payload is shorter than its fields";
        }
        int layout = LittleEndian.u8(bytes, Frame.HEADER + 13);
        if ((layout & ~AMPERES_LAYOUT) != 0) {
            return "layout is not known";
        }
        stride = (layout & AMPERES_LAYOUT) == 0 ? 9 : 13;
        if (count() == 0 || firstChannel() + count() > CHANNELS_MOST) {
            return "channels are out of range";
        }
        if (scan() == 0) {
            return "scan is 0";
        }
        return payloadLength < FIXED + count() * stride ? "payload is shorter than its fields" : null;
    }

    /** Sequence of the frame, u16. */
    public int sequence() {
        return sequence;
    }

    public long bootNumber() {
        return LittleEndian.u32(bytes, Frame.HEADER);
    }

    public long boardMillis() {
        return LittleEndian.u32(bytes, Frame.HEADER + 4);
    }

    public long scan() {
        return LittleEndian.u32(bytes, Frame.HEADER + 8);
    }

    public int contacts() {
        return LittleEndian.u8(bytes, Frame.HEADER + 12);
    }

    /** Whether every channel carries amperes. */
    public boolean amperes() {
        return stride == 13;
    }

    public int firstChannel() {
        return LittleEndian.u8(bytes, Frame.HEADER + 14);
    }

    /** How many channels the frame carries, 1 to 64; the methods below take 0 to one less. */
    public int count() {
        return LittleEndian.u8(bytes, Frame.HEADER + 15);
    }

    public int state(int i) {
        return LittleEndian.u8(bytes, at(i)) & STATE_MASK;
    }

    public int volts(int i) {
        return LittleEndian.i32(bytes, at(i) + 1);
    }

    public int celsius(int i) {
        return LittleEndian.i32(bytes, at(i) + 5);
    }

    /** Amperes in counts, discharge positive; 0 where the frame carries none. */
    public int amperes(int i) {
        return amperes() ? LittleEndian.i32(bytes, at(i) + 9) : 0;
    }

    /** A copy to keep. */
    public Readings toReadings() {
        List<Reading> readings = new ArrayList<>(count());
        for (int i = 0; i < count(); i++) {
            readings.add(new Reading(state(i), volts(i), celsius(i), amperes(i)));
        }
        return new Readings(bootNumber(), boardMillis(), scan(), contacts(), amperes(), firstChannel(), readings);
    }

    private int at(int i) {
        return Frame.HEADER + FIXED + Objects.checkIndex(i, count()) * stride;
    }
}
