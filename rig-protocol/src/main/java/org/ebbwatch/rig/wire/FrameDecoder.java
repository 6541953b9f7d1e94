package org.ebbwatch.rig.wire;

import java.util.Objects;
import java.util.Optional;
import java.util.zip.CRC32C;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.Message;

/**
 * Makes messages of a byte stream, cut anywhere, in either direction. Memory is bounded: one buffer for the longest frame.
 * No bytes make it throw; what it cannot use it drops, counts and reports, and it is in step again at the next delimiter.
 * READINGS allocate nothing. For one thread.
 *
 * <p>A frame cut short by a dead sender stays open until more bytes come; a caller with a clock ends it by
 * {@link #giveUpPartialFrame} at its deadline.
 */
public final class FrameDecoder {
    private static final Rejection BAD_COBS = new Rejection.BadCobs();
    private static final Rejection TOO_SHORT = new Rejection.TooShort();
    private static final Rejection TOO_LONG = new Rejection.TooLong();
    private static final Rejection BAD_CRC = new Rejection.BadCrc();
    private static final Rejection CUT_SHORT = new Rejection.CutShort();

    /** Where in the stream the decoder stands. */
    private enum Place {
        /** After a delimiter. */
        BETWEEN_FRAMES,
        /** Within a frame, all of it so far in the buffer. */
        IN_FRAME,
        /** Within a run of bytes too long for a frame, none of it kept. */
        IN_OVERLONG
    }

    private final FrameSink sink;
    private final byte[] buffer = new byte[Frame.LONGEST_ENCODED];
    private final ReadingsView view = new ReadingsView(buffer);
    private final CRC32C crc = new CRC32C();

    private Place place = Place.BETWEEN_FRAMES;
    private int held;
    private int lastSequence = -1;

    private long framesGood;
    private long framesBad;
    private long kindsSkipped;
    private long bytesSkipped;
    private long sequenceGaps;
    private long sequenceRepeats;

    public FrameDecoder(FrameSink sink) {
        this.sink = Objects.requireNonNull(sink, "sink");
    }

    /**
     * Takes the next bytes of the stream and hands every frame that ends in them to the sink.
     *
     * @throws IndexOutOfBoundsException if the range does not fit the array
     */
    public void accept(byte[] bytes, int offset, int length) {
        Objects.checkFromIndexSize(offset, length, bytes.length);
        int end = offset + length;
        int begin = offset;
        for (int i = offset; i < end; i++) {
            if (bytes[i] == Frame.DELIMITER) {
                keep(bytes, begin, i - begin);
                begin = i + 1;
                endFrame();
            }
        }
        keep(bytes, begin, end - begin);
    }

    /** Whether a frame has begun and not ended. */
    public boolean isWithinFrame() {
        return place != Place.BETWEEN_FRAMES;
    }

    /** Drops a frame that has begun and not ended, and reports it; does nothing between frames. */
    public void giveUpPartialFrame() {
        if (isWithinFrame()) {
            int dropped = held;
            startOver();
            reject(CUT_SHORT, dropped);
        }
    }

    /** Frames handed on as a message. */
    public long framesGood() {
        return framesGood;
    }

    /** Frames rejected, for any reason. */
    public long framesBad() {
        return framesBad;
    }

    /** Intact frames of a kind this version does not know. */
    public long kindsSkipped() {
        return kindsSkipped;
    }

    /** Bytes of rejected frames, as they came, without delimiters. */
    public long bytesSkipped() {
        return bytesSkipped;
    }

    /** Times that an intact frame's sequence was neither one more than the one before, nor the same. */
    public long sequenceGaps() {
        return sequenceGaps;
    }

    /** Times that an intact frame's sequence was the same as the one before. */
    public long sequenceRepeats() {
        return sequenceRepeats;
    }

    private void keep(byte[] bytes, int offset, int length) {
        if (length == 0) {
            return;
        }
        if (place == Place.IN_OVERLONG) {
            bytesSkipped += length;
        } else if (held + length > buffer.length) {
            place = Place.IN_OVERLONG;
            bytesSkipped += held + length;
            held = 0;
        } else {
            place = Place.IN_FRAME;
            System.arraycopy(bytes, offset, buffer, held, length);
            held += length;
        }
    }

    private void endFrame() {
        Place ended = place;
        int encodedLength = held;
        startOver();
        switch (ended) {
            case BETWEEN_FRAMES -> {}
            case IN_OVERLONG -> reject(TOO_LONG, 0);
            case IN_FRAME -> open(encodedLength);
        }
    }

    private void startOver() {
        place = Place.BETWEEN_FRAMES;
        held = 0;
    }

    private void open(int encodedLength) {
        int length = Cobs.decode(buffer, 0, encodedLength, buffer, 0);
        if (length == Cobs.NOT_DECODABLE) {
            reject(BAD_COBS, encodedLength);
        } else if (length < Frame.SHORTEST) {
            reject(TOO_SHORT, encodedLength);
        } else if (length > Frame.LONGEST) {
            reject(TOO_LONG, encodedLength);
        } else if (!isIntact(length)) {
            reject(BAD_CRC, encodedLength);
        } else if (LittleEndian.u8(buffer, 0) != Frame.VERSION) {
            reject(new Rejection.UnknownVersion(LittleEndian.u8(buffer, 0)), encodedLength);
        } else {
            deliver(encodedLength, length - Frame.SHORTEST);
        }
    }

    private boolean isIntact(int length) {
        crc.reset();
        crc.update(buffer, 0, length - Frame.CHECKSUM);
        return (int) crc.getValue() == LittleEndian.i32(buffer, length - Frame.CHECKSUM);
    }

    private void deliver(int encodedLength, int payloadLength) {
        int code = LittleEndian.u8(buffer, 1);
        int sequence = LittleEndian.u16(buffer, 2);
        follow(sequence);
        if (code == Kind.READINGS.code()) {
            deliverReadings(sequence, encodedLength, payloadLength);
            return;
        }
        Optional<Kind> kind = Kind.of(code);
        if (kind.isEmpty()) {
            kindsSkipped++;
            sink.unknownKind(sequence, code);
            return;
        }
        Message message;
        try {
            message = PayloadReader.read(kind.get(), buffer, Frame.HEADER, payloadLength);
        } catch (IllegalArgumentException e) {
            reject(new Rejection.Malformed(sequence, code, e.getMessage()), encodedLength);
            return;
        }
        framesGood++;
        sink.message(sequence, message);
    }

    private void deliverReadings(int sequence, int encodedLength, int payloadLength) {
        String wrong = view.wrap(sequence, payloadLength);
        if (wrong == null) {
            framesGood++;
            sink.readings(view);
        } else {
            reject(new Rejection.Malformed(sequence, Kind.READINGS.code(), wrong), encodedLength);
        }
    }

    private void follow(int sequence) {
        if (sequence == lastSequence) {
            sequenceRepeats++;
        } else if (lastSequence >= 0 && sequence != ((lastSequence + 1) & 0xFFFF)) {
            sequenceGaps++;
        }
        lastSequence = sequence;
    }

    private void reject(Rejection why, int bytes) {
        framesBad++;
        bytesSkipped += bytes;
        sink.rejected(why);
    }
}
